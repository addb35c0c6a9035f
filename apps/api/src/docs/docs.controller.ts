import { Controller, Get, Header } from '@nestjs/common';
import { openApi } from '@stokehold/domain/contract';
import { VERSION } from '../health/index.js';
import { Open } from '../identity/index.js';
import { docsPage, LOOK } from './page.js';

/** How the API is called, for programs and for people; made from the contract that the server validates with. */
@Open()
@Controller()
export class DocsController {
  private readonly document = openApi(VERSION);
  private readonly page = docsPage(VERSION);

  @Get('openapi.json')
  openApi(): object {
    return this.document;
  }

  @Get('docs')
  @Header('Content-Type', 'text/html; charset=utf-8')
  docs(): string {
    return this.page;
  }

  @Get('docs/look.css')
  @Header('Content-Type', 'text/css; charset=utf-8')
  look(): string {
    return LOOK;
  }
}
