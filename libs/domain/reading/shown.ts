import { type Result, ok, refuse } from '../quantity/index.js';
import { pt100TempC } from './platinum.js';
import { type Thermistor, thermistorTempC } from './thermistor.js';
import { typeKTempC } from './thermocouple.js';

/** What an input of a gateway read: a temperature already, or what the sensor gave. */
export type Raw =
  | { readonly kind: 'temp'; readonly tempC: number }
  | { readonly kind: 'type-k'; readonly emfV: number; readonly coldJunctionTempC: number }
  | { readonly kind: 'pt100'; readonly resistanceOhm: number }
  | { readonly kind: 'thermistor'; readonly resistanceOhm: number; readonly of: Thermistor }
  /** The converter itself says that its input is broken. */
  | { readonly kind: 'fault'; readonly fault: ElectricalFault };

/** open: nothing is connected, a wire is broken. short: the wires touch. */
export type ElectricalFault = 'open' | 'short';

/** A thermistor of a pit outside these is a broken wire, or one that touches itself, ohm. Source: our choice, about -60 °C and 300 °C of a 10 kOhm part. */
const THERMISTOR_OPEN_OHM = 1e6;
const THERMISTOR_SHORT_OHM = 15;

/** Signatures of a platinum element: far above 850 °C is an open wire, below -200 °C a short. Source: common practice, no source. */
function ofPlatinum(resistanceOhm: number): Result<number, ElectricalFault> {
  const tempC = pt100TempC(resistanceOhm);
  return tempC === undefined ? refuse(resistanceOhm > 100 ? 'open' : 'short') : ok(tempC);
}

function ofThermistor(resistanceOhm: number, of: Thermistor): Result<number, ElectricalFault> {
  if (!(resistanceOhm < THERMISTOR_OPEN_OHM)) return refuse('open');
  return resistanceOhm < THERMISTOR_SHORT_OHM ? refuse('short') : ok(thermistorTempC(of, resistanceOhm));
}

/**
 * The temperature that a raw reading stands for, before the probe's own correction.
 *
 * @returns °C, or the fault that the reading is a sign of; a thermocouple that is shorted gives no sign here: it reads the place of
 *   the short, which only its neighbours tell. Held to shown.test.ts
 */
export function shownTempC(raw: Raw): Result<number, ElectricalFault> {
  switch (raw.kind) {
    case 'temp':
      return ok(raw.tempC);
    case 'fault':
      return refuse(raw.fault);
    case 'pt100':
      return ofPlatinum(raw.resistanceOhm);
    case 'thermistor':
      return ofThermistor(raw.resistanceOhm, raw.of);
    case 'type-k': {
      const tempC = typeKTempC(raw);
      // Off the scale of the standard at either end, the burn-out current has taken the input there.
      return tempC === undefined ? refuse('open') : ok(tempC);
    }
  }
}
