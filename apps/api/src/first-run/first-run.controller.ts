import { Controller, Req, Res } from '@nestjs/common';
import { type Me, routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type CookieRequest, type CookieResponse, putDevice, putSession } from '../identity/index.js';
import { Answers, Input } from '../platform/index.js';
import { FirstRuns } from './first-run.service.js';

@Controller()
export class FirstRunController {
  constructor(private readonly firstRuns: FirstRuns) {}

  @Answers(routes.firstRun)
  async run(
    @Input() input: RouteInput<Routes['firstRun']>,
    @Req() request: CookieRequest,
    @Res({ passthrough: true }) response: CookieResponse,
  ): Promise<Me> {
    const { me, device, session } = await this.firstRuns.run(input);
    putDevice(request, response, device);
    putSession(request, response, session);
    return me;
  }
}
