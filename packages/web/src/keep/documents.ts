import type { CatalogueFile, Instant, JobFile, PriceBookFile } from '@slabwright/core';
import type { HeadingOf } from './live-document.ts';

/** What is stored under the kind `job`: the job file with the names of the files it is planned with. */
export interface JobDocument {
  readonly job: JobFile;
  /** Id of a stored catalogue, and of a stored price book when the device has one. */
  readonly catalogue: string;
  readonly priceBook?: string;
  /** Id of a stored weather file. Another weather is another document, so that undo brings the one before back. */
  readonly weather?: string;
  /** Planned as of this moment instead of now: an example, or a job looked back at. */
  readonly asOf?: Instant;
  /** Invented, came with the program. */
  readonly example?: boolean;
}

export const jobHeading: HeadingOf<JobDocument> = {
  title: ({ job }) => job.title || job.id,
  searchText: ({ job }) =>
    [job.number, job.customer?.name, job.customer?.address, job.customer?.site, ...job.areas.map(({ name }) => name)]
      .filter(Boolean)
      .join(' '),
};

export const catalogueHeading: HeadingOf<CatalogueFile> = {
  title: ({ id }) => id,
  searchText: ({ products }) => products.map(({ name }) => name).join(' '),
};

export const priceBookHeading: HeadingOf<PriceBookFile> = { title: ({ id }) => id, searchText: () => '' };
