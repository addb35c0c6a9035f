import { Injectable } from '@nestjs/common';
import type { CrewMember, Done, SaveCrewMember } from '@stokehold/domain/contract';
import { Enrolment, Pins } from '../identity/index.js';
import { type Actor, Commands, type Deed, refused } from '../platform/index.js';
import { CrewStore } from './crew.store.js';
import { YardStore } from './yard.store.js';

/** The crew list: who works here, what they can do, and their PINs. */
@Injectable()
export class Crew {
  constructor(
    private readonly commands: Commands,
    private readonly store: CrewStore,
    private readonly yards: YardStore,
    private readonly pins: Pins,
    private readonly enrolment: Enrolment,
  ) {}

  save(actor: Actor, { pin, ...rest }: SaveCrewMember): Promise<Done> {
    const command = { ...rest, ...(pin !== undefined && { pin: this.pins.inCommand(pin) }) };
    return this.commands.run(actor, 'save-crew-member', command, async (deed) => {
      await this.keep(deed, rest.person, pin);
      return { done: true };
    });
  }

  /** Adds or changes somebody; the first run and a practice night come this way too. */
  async keep(deed: Deed, person: CrewMember, pin?: string): Promise<void> {
    const { em, yardId } = deed;
    await this.yards.hold(em, yardId);
    const owner = await this.store.yardOf(em, person.id);
    if (owner !== undefined && owner !== yardId) refused('id-taken', 'Somebody else has this id. Add the person again, so that they get one of their own.');
    const crew = await this.store.crew(em, yardId);
    const others = crew.filter(({ id }) => id !== person.id);
    if (others.some(({ name }) => name.toLowerCase() === person.name.toLowerCase())) {
      refused('name-taken', `There is a ${person.name} on the crew list already, perhaps among those who have left. Add an initial.`, { name: person.name });
    }
    const managed = crew.some((before) => before.id === person.id && manages(before));
    if (managed && !manages(person) && !others.some((other) => manages(other) && other.hasPin)) {
      refused('last-manager', `Nobody but ${person.name} can manage this yard. Give somebody else the manager's role and a PIN first.`, { name: person.name });
    }
    await this.store.save(em, yardId, person);
    if (pin !== undefined) await this.pins.set(em, person.id, pin);
    if (person.left) await this.enrolment.endSessionsOf(em, person.id);
    deed.tell({ kind: 'crew-set-up', personId: person.id });
  }
}

const manages = ({ role, left }: CrewMember) => role === 'manager' && !left;
