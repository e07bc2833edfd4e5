import { z } from 'zod';
import { amount, date, fact, idText, quantity, text, trouble } from './fields.ts';
import type { Result } from './kernel/issue.ts';
import { checkSchema, readJson, validate } from './read.ts';

/** The firm's money: kept apart from jobs, so that a crew's phone plans the whole job without it. */

export const PRICE_BOOK_SCHEMA = 'slabwright.price-book';
export const PRICE_BOOK_VERSION = 1;

export const PER = ['job', 'day', 'h', 'm²', 'ft²', 'm', 'ft', 'kg', 'lb', 'piece'] as const;
export type Per = (typeof PER)[number];

const share = (most: string) => fact('1', 'price', { least: '0 %', most, shows: 'share' });

interface Listed {
  readonly id?: string;
  readonly product?: string;
  readonly pack?: string;
  readonly media?: string;
  readonly jurisdiction?: string;
}

/** What an entry of each list is looked up by. */
const KEYS = {
  packs: ({ product = '', pack = '' }: Listed) => `${product}, ${pack}`,
  media: ({ media = '' }: Listed) => media,
  lines: ({ id = '' }: Listed) => id,
  changes: ({ id = '' }: Listed) => id,
  places: ({ jurisdiction = '' }: Listed) => jurisdiction,
} as const;

/** Two entries for one thing: which of the two amounts counts would hang on their order, so neither does. */
function eachOnce(
  book: Readonly<Partial<Record<keyof typeof KEYS, readonly Listed[] | undefined>>>,
  ctx: z.RefinementCtx,
): void {
  for (const [list, keyOf] of Object.entries(KEYS) as [keyof typeof KEYS, (one: Listed) => string][]) {
    const seen = new Map<string, number>();
    (book[list] ?? []).forEach((one, i) => {
      const key = keyOf(one);
      const first = seen.get(key);
      if (first === undefined) seen.set(key, i);
      else
        trouble(ctx, { code: 'price-book-entry-twice', value: key, names: { first: `${list}[${first}]` } }, [list, i]);
    });
  }
}

export const priceBook = () =>
  z
    .strictObject({
      schema: z.literal(`${PRICE_BOOK_SCHEMA}/${PRICE_BOOK_VERSION}`),
      id: idText(),
      currency: z.string().regex(/^[A-Z]{3}$/),
      date: date().optional(),
      packs: z.array(z.strictObject({ product: idText(), pack: idText(), price: amount() })).max(5000),
      media: z
        .array(z.strictObject({ media: idText(), bag: amount() }))
        .max(500)
        .optional(),
      /** Wage with everything the firm pays for an hour. */
      wage: amount(),
      /** Consumables, disposal, travel, hire: what a job costs beside material and hours. */
      lines: z
        .array(z.strictObject({ id: idText(), name: text(80), per: z.enum(PER), amount: amount() }))
        .max(200)
        .optional(),
      /** Shares of PRICE, not of cost. */
      overhead: share('90 %'),
      profit: share('90 %'),
      minimumJob: amount().optional(),
      changes: z
        .array(
          z.strictObject({
            id: idText(),
            name: text(120),
            per: z.enum(PER),
            amount: amount(),
            /** True when the customer pays less. */
            deducts: z.boolean().optional(),
            trigger: text(200).optional(),
          }),
        )
        .max(200)
        .optional(),
      /** Rules by place, with the document they stand in. They ship empty but for an invented place. */
      places: z
        .array(
          z.strictObject({
            jurisdiction: text(80),
            source: text(200),
            date: date(),
            tax: z
              .strictObject({
                rate: share('50 %'),
                on: z.enum(['line', 'invoice']),
                taxed: z.enum(['material', 'everything', 'nothing']),
              })
              .optional(),
            deposit: z.strictObject({ share: share('100 %'), most: amount().optional() }).optional(),
          }),
        )
        .max(200)
        .optional(),
      validFor: quantity('s', { least: '1 d', most: '730 d', shows: 'duration' }).optional(),
    })
    .superRefine(eachOnce);

export type PriceBook = z.output<ReturnType<typeof priceBook>>;
export type PriceBookFile = z.input<ReturnType<typeof priceBook>>;

const PRICE_BOOK = priceBook();

export function priceBookFrom(value: unknown): Result<PriceBook> {
  const issues = checkSchema(value, PRICE_BOOK_SCHEMA, PRICE_BOOK_VERSION);
  return issues.length > 0 ? { ok: false, issues } : validate(PRICE_BOOK, value);
}

export function priceBookFromText(text: string): Result<PriceBook> {
  const json = readJson(text);
  return json.ok ? priceBookFrom(json.value) : json;
}
