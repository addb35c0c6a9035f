/** Where lies what must not lie in the database, such as the key of the PINs. */
export class DataFolder {
  constructor(
    readonly path: string,
    /** Whether the database lies in it too, and not on a server of its own. */
    readonly holdsDatabase = false,
  ) {}
}
