export { type App, type AppOptions, createApp } from './app.ts';
export { DATABASE, openDataFolder } from './data-folder.ts';
export { addDemoJobs } from './demo.ts';
export {
  catalogueWords,
  type HeadingWords,
  type JobDocument,
  jobWords,
  priceBookWords,
  weatherWords,
} from './job-document.ts';
export { CannotListen, DEFAULT_PORT, LOOPBACK, type ServeOptions, type Serving, serve } from './listen.ts';
