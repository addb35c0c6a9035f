import { z } from 'zod';

/** Six digits; never all the same, never a run such as 123456. Held by the server as argon2id with a key kept elsewhere. */
export const pin = z
  .string()
  .regex(/^\d{6}$/, 'six digits')
  .refine((digits) => !/^(\d)\1{5}$/.test(digits) && !'01234567890'.includes(digits) && !'09876543210'.includes(digits), {
    message: 'not six times the same digit and not a run of digits',
  });
