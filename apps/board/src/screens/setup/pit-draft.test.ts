import { describe, expect, it } from 'vitest';
import { pitSettings } from '@stokehold/domain/contract';
import { FormReading } from '../../parts/form-reading.js';
import { figuresOf } from '../../units/figures.js';
import { draftOfPit, freshPit, pitOfDraft } from './pit-draft.js';

const figures = figuresOf({ units: 'us', timeZone: 'America/Chicago', language: 'en' });
const reading = () => new FormReading(figures, 'America/Chicago');
const pit = { ...freshPit('018f3c2e-0000-7000-8000-000000000001' as never, { xM: 5, yM: 4 }), name: 'Larch', fireEndHeadingDeg: 292.5 };

describe('a pit as it is typed', () => {
  it('a fresh one is one that the contract takes, once it has a name', () => {
    expect(pitSettings.safeParse(pit).success).toBe(true);
  });
  it('comes back the same when nothing was changed, though it was shown in inches', () => {
    expect(pitOfDraft(draftOfPit(pit, figures), pit, reading())).toEqual(pit);
  });
  it('takes a changed size in the yard’s units', () => {
    const draft = draftOfPit(pit, figures);
    const changed = pitOfDraft({ ...draft, sizes: { ...draft.sizes, chamberLengthM: '96' } }, pit, reading());
    expect(changed!.chamberLengthM).toBeCloseTo(2.4384, 9); // 96 x 0.0254, NIST SP 811 (2008) B.8
  });
  it('tells each field it cannot read, also a band upside down', () => {
    const draft = draftOfPit(pit, figures);
    const read = reading();
    expect(pitOfDraft({ ...draft, name: ' ', heading: '400', zones: ['30', 'long'], low: '260', high: '250' }, pit, read)).toBeUndefined();
    expect(Object.keys(read.wrongs).sort()).toEqual(['heading', 'high', 'name', 'zone.1']);
  });
  it('a probe in a zone that is gone lies in the last one', () => {
    const probed = { ...pit, probes: [{ id: '018f3c2e-0000-7000-8000-000000000002' as never, name: 'stack end', zone: 2 }] };
    const draft = draftOfPit(probed, figures);
    expect(pitOfDraft({ ...draft, zones: draft.zones.slice(0, 2) }, probed, reading())!.probes[0]!.zone).toBe(1);
  });
});
