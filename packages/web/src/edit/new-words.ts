/** What the first page of a job says. */
export const newWords = {
  title: 'New job',
  name: 'What the job is called',
  nameExample: 'Garage, Quarry Walk',
  noName: 'Give the job a name; it can be changed later.',
  zone: 'Time zone of the site',
  zoneNote: 'Taken from this device.',
  noZone: (zone: string) => `“${zone}” is no time zone known here. One looks like America/Denver or Europe/Dublin.`,
  units: 'Units on its papers',
  catalogue: 'Products and rates from',
  ownCatalogue: 'your own catalogue',
  example: (name: string) => `${name}, invented example`,
  start: 'Draw the floor',
  firstRoom: 'Floor',
} as const;
