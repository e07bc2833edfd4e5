/** The part of the general psychrometrics package that the comparison test calls. */
declare module 'psychrolib' {
  interface Psychrometrics {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(celsius: number): number;
    GetTDewPointFromRelHum(celsius: number, relativeHumidity: number): number;
    GetTWetBulbFromRelHum(celsius: number, relativeHumidity: number, pressure: number): number;
    GetHumRatioFromRelHum(celsius: number, relativeHumidity: number, pressure: number): number;
    GetRelHumFromTWetBulb(celsius: number, wetBulb: number, pressure: number): number;
    GetStandardAtmPressure(altitude: number): number;
  }
  const psychrometrics: Psychrometrics;
  export = psychrometrics;
}
