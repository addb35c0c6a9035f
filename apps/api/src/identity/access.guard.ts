import { type CanActivate, type ExecutionContext, Injectable } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { type Permission, type Route, routes } from '@stokehold/domain/contract';
import { type Actor, type AskedRequest, may, refused, ROUTE } from '../platform/index.js';
import { bearerOf, tokensOf } from './cookies.js';
import { DeviceRates } from './device-rates.js';
import { Identity } from './identity.service.js';
import { OPEN } from './open.js';
import { isOwnOrigin } from './origin.js';
import { RateLimit } from './rate-limit.js';

/** The ways in where a stranger could guess. */
const GUESSABLE: readonly Route[] = [routes.firstRun, routes.enrolDevice, routes.signIn];

/** Stands before every route: where the request comes from, who asks, and whether they may. */
@Injectable()
export class AccessGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly identity: Identity,
    private readonly rateLimit: RateLimit,
    private readonly deviceRates: DeviceRates,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    // A socket is asked at its handshake, by who opens it.
    if (context.getType() !== 'http') return true;
    const request = context.switchToHttp().getRequest<AskedRequest & { readonly method: string }>();
    const route = this.reflector.get<Route | undefined>(ROUTE, context.getHandler());
    if (request.method !== 'GET' && !isOwnOrigin(request.headers['origin'], request.headers['host'])) {
      refused('origin-foreign', 'This was sent by a page of another address. Open Stokehold at its own address and send it from there.');
    }
    if (route && GUESSABLE.includes(route)) this.rateLimit.take(route.path, request.ip);
    const isOpen = this.reflector.getAllAndOverride<boolean | undefined>(OPEN, [context.getHandler(), context.getClass()]);
    const permission = route?.may ?? (isOpen ? 'open' : 'device');
    if (permission !== 'open') this.deviceRates.take(tokensOf(request.headers['cookie'], bearerOf(request.headers['authorization'])).device, route);
    await this.ask(request, permission);
    return true;
  }

  private async ask(request: AskedRequest, permission: Permission): Promise<void> {
    if (permission === 'open') return;
    request.actor ??= await this.whoAsks(request);
    if (!may(request.actor, permission)) refuse(request.actor);
  }

  private async whoAsks({ headers }: AskedRequest): Promise<Actor> {
    const actor = await this.identity.enter(headers['cookie'], bearerOf(headers['authorization']));
    return actor ?? refused('device-unknown', 'This device is not enrolled, or it was revoked. Ask the manager for a code and enrol it.');
  }
}

function refuse({ device, person }: Actor): never {
  if (person) return refused('not-allowed', `${person.name} may not do this. Ask the shift lead or the manager.`);
  if (device.kind === 'hand') return refused('not-signed-in', 'Nobody is signed in on this device. Sign in and send it again.');
  return refused('not-allowed', device.kind === 'wall' ? 'A wall board only shows. Use a phone or a tablet.' : 'A gateway only sends readings. Use a phone or a tablet.');
}
