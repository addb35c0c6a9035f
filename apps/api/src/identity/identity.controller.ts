import { Controller, Req, Res } from '@nestjs/common';
import { type Done, type Me, routes, type RouteInput, type Routes, type SessionView, type SignInChoices } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { bearerOf, type CookieRequest, type CookieResponse, putDevice, putSession, putYard, takeSession, tokensOf } from './cookies.js';
import { Devices } from './devices.service.js';
import { Identity } from './identity.service.js';

@Controller()
export class IdentityController {
  constructor(
    private readonly identity: Identity,
    private readonly devices: Devices,
  ) {}

  @Answers(routes.enrolDevice)
  async enrol(
    @Input() input: RouteInput<Routes['enrolDevice']>,
    @Req() request: CookieRequest,
    @Res({ passthrough: true }) response: CookieResponse,
  ): Promise<Me> {
    const { me, token } = await this.devices.enrol(input);
    putDevice(request, response, token);
    takeSession(request, response);
    return me;
  }

  @Answers(routes.signInChoices)
  choices(@By() actor: Actor): Promise<SignInChoices> {
    return this.identity.choices(actor);
  }

  @Answers(routes.signIn)
  async signIn(
    @Input() input: RouteInput<Routes['signIn']>,
    @By() actor: Actor,
    @Req() request: CookieRequest,
    @Res({ passthrough: true }) response: CookieResponse,
  ): Promise<Me> {
    const { me, session } = await this.identity.signIn(actor, input);
    putSession(request, response, session);
    return me;
  }

  @Answers(routes.signOut)
  async signOut(@By() actor: Actor, @Req() request: CookieRequest, @Res({ passthrough: true }) response: CookieResponse): Promise<Done> {
    await this.identity.signOut(actor);
    takeSession(request, response);
    return { done: true };
  }

  @Answers(routes.sessions)
  sessions(@By() actor: Actor): Promise<SessionView[]> {
    return this.identity.sessions(actor);
  }

  @Answers(routes.endSession)
  endSession(@Input() input: RouteInput<Routes['endSession']>, @By() actor: Actor): Promise<Done> {
    return this.identity.endSession(actor, input);
  }

  /** Every screen asks this as it opens, and so an enrolled device stays enrolled as long as it is used. */
  @Answers(routes.me)
  me(@By() actor: Actor, @Req() request: CookieRequest, @Res({ passthrough: true }) response: CookieResponse): Promise<Me> {
    const { device } = tokensOf(request.headers['cookie'], bearerOf(request.headers['authorization']));
    if (device && request.headers['cookie']) {
      putDevice(request, response, device);
      putYard(request, response, actor.yardId);
    }
    return this.identity.me(actor);
  }
}
