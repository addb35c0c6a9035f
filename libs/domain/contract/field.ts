import { z } from 'zod';
import type {
  Cents, CookId, DeviceId, DryBasis, LotId, PersonId, PitId, ProbeId, ServiceId, ShiftId, TaskId, YardId,
} from '../quantity/index.js';
import { DEVICE_KINDS, ROLES } from './permission.js';

/**
 * A number field that goes in plain and comes out branded; still fit for JSON Schema.
 * `min` and `max` are inclusive, in the unit of the field's name.
 */
export const quantity = <Q extends number>(min: number, max: number) => z.number().min(min).max(max) as unknown as z.ZodType<Q, number>;
const id = <I extends string>() => z.uuid() as unknown as z.ZodType<I, string>;

export const yardId = id<YardId>();
export const pitId = id<PitId>();
export const personId = id<PersonId>();
export const deviceId = id<DeviceId>();
export const shiftId = id<ShiftId>();
export const lotId = id<LotId>();
export const cookId = id<CookId>();
export const serviceId = id<ServiceId>();
export const taskId = id<TaskId>();
export const probeId = id<ProbeId>();

export const role = z.enum(ROLES);
export const deviceKind = z.enum(DEVICE_KINDS);

/** A day that the calendar has, of the years 2000 to 2199: nights are there, and times reckoned from them stay in what every database can write. */
const DAY = String.raw`2[01]\d\d-(?:(?:0[13578]|1[02])-(?:0[1-9]|[12]\d|3[01])|(?:0[469]|11)-(?:0[1-9]|[12]\d|30)|02-(?:0[1-9]|1\d|2[0-8]))|(?:2000|2[01](?:0[48]|[2468][048]|[13579][26]))-02-29`;
const TIME = String.raw`(?:[01]\d|2[0-3]):[0-5]\d:[0-5]\d(?:\.\d{1,9})?Z`;
/** ISO 8601, UTC: '2027-03-14T08:00:00Z'. Wall times exist on screens only. */
export const instant = z.string().regex(new RegExp(`^(?:${DAY})T${TIME}$`), 'an instant in UTC of the years 2000 to 2199, such as 2027-03-14T08:00:00Z').meta({ format: 'date-time' });
/** Made by the client, once per command: the same key again brings the first answer and changes nothing. */
export const commandKey = z.uuid();
/** The device's clock as it sent the command; with the arrival it gives the device's clock offset. */
export const sentAt = instant.optional();

export const shortText = z.string().trim().min(1).max(60);
export const note = z.string().trim().max(500);

/** A temperature at grate height as a hand or a gauge can read it there: -40 °C to 350 °C (-40 °F to 662 °F). */
export const grateTempC = z.number().min(-40).max(350);
export const airTempC = z.number().min(-50).max(60);
/** Dry basis, 0.02 to 1.2: freshly cut wood can hold more water than wood substance, but not 140 %. */
export const moistureFrac = quantity<DryBasis>(0.02, 1.2);
export const costCents = z.number().int().min(0).max(1_000_000_00) as unknown as z.ZodType<Cents, number>;
/** Pay of an hour, within what the sum of a night's pay is reckoned for. */
export const rateCents = z.number().int().min(0).max(10_000_00) as unknown as z.ZodType<Cents, number>;
export const frac = z.number().min(0).max(1);
/** Compass degrees, clockwise from north. */
export const headingDeg = z.number().min(0).lt(360);
export const seconds = z.number().int().min(0).max(7 * 24 * 3600);
