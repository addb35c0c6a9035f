import { Injectable } from '@nestjs/common';

/** How many iterations a plan is searched for. */
@Injectable()
export class SearchBudget {
  /** While somebody waits who came, went or decided, and for the first plan of a night. */
  atOnce = 400;
  /** The same while a fire would be looked at past its latest safe. */
  untilSafe = 6000;
  /** For what comes by the dozen, where it is worth a search at all. */
  inPassing = 40;
  /** While nobody waits. 0: the plan found at once stays, so that the same facts give the same night to the last digit. */
  afterwards = 0;
}
