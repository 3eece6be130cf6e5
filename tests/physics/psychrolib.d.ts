declare module "psychrolib" {
  interface Psychrometrics {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(t: number): number;
    GetHumRatioFromVapPres(vapourPressure: number, p: number): number;
    GetHumRatioFromRelHum(t: number, relativeHumidity: number, p: number): number;
    GetHumRatioFromTWetBulb(t: number, wet: number, p: number): number;
    GetTWetBulbFromHumRatio(t: number, W: number, p: number): number;
    GetMoistAirEnthalpy(t: number, W: number): number;
    GetSatHumRatio(t: number, p: number): number;
    GetStandardAtmPressure(altitude: number): number;
  }
  const library: Psychrometrics;
  export default library;
}
