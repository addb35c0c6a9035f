import { z } from 'zod';

/** Six digits; never all the same, never a run such as 123456. Held by the server as argon2id with a key kept elsewhere. */
export const pin = z
  .string()
  .regex(/^\d{6}$/, 'six digits')
  .refine((digits) => !/^(\d)\1{5}$/.test(digits) && !'01234567890'.includes(digits) && !'09876543210'.includes(digits), {
    message: 'not six times the same digit and not a run of digits',
  });

const LEAST_DIFFERENT = 6;
/** What most people type when twelve characters are asked for begins or ends so. Source: lists of leaked passwords, from memory. */
const USUAL = /^(?:password|passwort|contrase|qwerty|letmein|welcome|iloveyou|administrator|123456|abcdef)|(?:stokehold|barbecue|brisket|pitmaster)/i;

/** For who works at a desk: twelve characters or more, as they are, of any kind; not the usual ones, and not the same few again and again. */
export const password = z
  .string()
  .min(12)
  .max(100)
  .refine((typed) => new Set(typed.toLowerCase()).size >= LEAST_DIFFERENT && !USUAL.test(typed), { message: 'not a usual one, and at least six different characters' });

/** What somebody signs in with. */
export const pinOrPassword = z.union([pin, password]);
