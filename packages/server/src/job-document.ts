import type { CatalogueFile, Instant, JobFile, PriceBookFile } from '@slabwright/core';

/** What is stored under the kind `job`: the job file with the names of the files it is planned with. */
export interface JobDocument {
  readonly job: JobFile;
  /** Id of a stored catalogue, and of a stored price book when there is one. */
  readonly catalogue: string;
  readonly priceBook?: string;
  /** Id of the stored weather it is planned in. */
  readonly weather?: string;
  /** Planned as of this moment instead of now: an example, or a job looked back at. */
  readonly asOf?: Instant;
  /** Invented, came with the program. */
  readonly example?: boolean;
}

export interface HeadingWords {
  readonly title: string;
  readonly searchText: string;
}

/** Words a stored job is listed and found by. */
export const jobWords = ({ job }: JobDocument): HeadingWords => ({
  title: job.title || job.id,
  searchText: [
    job.number,
    job.customer?.name,
    job.customer?.address,
    job.customer?.site,
    ...job.areas.map(({ name }) => name),
  ]
    .filter((word) => word !== undefined && word !== '')
    .join(' '),
});

/** Words a stored catalogue is listed and found by. */
export const catalogueWords = ({ id, products }: CatalogueFile): HeadingWords => ({
  title: id,
  searchText: products.map(({ name }) => name).join(' '),
});

/** Weather is listed by where it comes from. */
export const weatherWords = ({ source }: { readonly source: string }): HeadingWords => ({
  title: source || 'weather',
  searchText: '',
});

export const priceBookWords = ({ id }: PriceBookFile): HeadingWords => ({ title: id, searchText: '' });
