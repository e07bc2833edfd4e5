import { indexedDbPlaces, runAcceptance } from '@slabwright/store/acceptance';

/** Runs the store's rules in this browser's own database and leaves the results where the test reads them. */
const results = await runAcceptance(indexedDbPlaces(), true);
Object.assign(window, { results });
document.title = 'done';
