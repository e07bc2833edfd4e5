/**
 * Something to be said, without words: a message code, the ids of the entries its numbers come from, and names that
 * are data (a product, a test point). Words live in the message files, with the reader's plural and decimal rules.
 */
export interface Said {
  readonly code: string;
  /** Placeholder to entry id. */
  readonly figures?: Readonly<Record<string, string>>;
  /** Placeholder to text that a person wrote or that is a key of the words (`@key` is looked up in the message file). */
  readonly names?: Readonly<Record<string, string>>;
}
