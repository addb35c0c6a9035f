import { Controller, Get, Header, NotFoundException, Param, Res } from '@nestjs/common';
import { type CalendarAddress, type RouteInput, routes, type Routes, type WebhookSaved, type WebhookView } from '@stokehold/domain/contract';
import { Open } from '../identity/index.js';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Calendars } from './calendars.service.js';
import { Links } from './links.service.js';
import { Metrics } from './metrics.js';

/** The part of an answer that sets its media type. */
interface TypedResponse {
  type(mediaType: string): void;
}

@Controller()
export class LinksController {
  constructor(
    private readonly links: Links,
    private readonly calendars: Calendars,
    private readonly metrics: Metrics,
  ) {}

  @Answers(routes.webhook)
  webhook(@By() actor: Actor): Promise<WebhookView> {
    return this.links.view(actor);
  }

  @Answers(routes.saveWebhook)
  saveWebhook(@Input() input: RouteInput<Routes['saveWebhook']>, @By() actor: Actor): Promise<WebhookSaved> {
    return this.links.save(actor, input);
  }

  @Answers(routes.makeCalendarAddress)
  makeCalendarAddress(@Input() input: RouteInput<Routes['makeCalendarAddress']>, @By() actor: Actor): Promise<CalendarAddress> {
    return this.calendars.makeAddress(actor, input);
  }

  /** The address itself is the secret: calendar programs send no headers. */
  @Open()
  @Get('calendars/:file')
  @Header('Content-Type', 'text/calendar; charset=utf-8')
  @Header('Cache-Control', 'no-store')
  async calendar(@Param('file') file: string): Promise<string> {
    const calendar = file.endsWith('.ics') ? await this.calendars.calendar(file.slice(0, -'.ics'.length)) : undefined;
    if (calendar === undefined) throw new NotFoundException();
    return calendar;
  }

  /** For an enrolled device: Prometheus sends its token as a bearer token. */
  @Get('metrics')
  @Header('Cache-Control', 'no-store')
  async read(@Res({ passthrough: true }) response: TypedResponse): Promise<string> {
    const { text, type } = await this.metrics.read();
    response.type(type);
    return text;
  }
}
