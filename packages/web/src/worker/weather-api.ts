/** What the screen gives as weather, and what comes back. */

export interface ColumnChoice {
  readonly time: string;
  /** `UTC` or the zone of a wall clock. */
  readonly zone: string;
  readonly fields: Readonly<Record<string, { readonly column: string; readonly unit: string }>>;
}

export type TypedNumbers = Readonly<Record<'coldest' | 'warmest' | 'humidity' | 'wind' | 'cloud', string>>;

export type WeatherAsked =
  | { readonly is: 'file'; readonly text: string; readonly name: string; readonly columns?: ColumnChoice }
  | { readonly is: 'typed'; readonly numbers: TypedNumbers }
  | {
      readonly is: 'service';
      readonly service: 'met-norway' | 'nws';
      /** What the weather is called afterwards. */
      readonly name: string;
      readonly allowed: boolean;
    };

export interface WeatherMade {
  readonly file: unknown;
  /** What is wrong or was mended, in words. */
  readonly issues: readonly string[];
  readonly headings: readonly string[];
}
