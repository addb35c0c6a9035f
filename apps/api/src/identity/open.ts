import { SetMetadata } from '@nestjs/common';

export const OPEN = Symbol('open');

/** For what is no route of the contract and tells nothing of any yard: it answers strangers too. */
export const Open = (): ClassDecorator & MethodDecorator => SetMetadata(OPEN, true);
