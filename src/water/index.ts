export {
  type ActiveChlorineSpread,
  activeChlorineSpread,
  type SunHalfLives,
  sunHalfLives,
} from './active-chlorine.ts'
export {
  limitsFor,
  NO_STABILISER_MG_PER_L,
  type OwnChlorineLimits,
  type WaterLimits,
} from './chlorine-limits.ts'
export { type Columns, doseColumns, openColumns, speciationColumns } from './columns.ts'
export { type ChlorineReadings, type CombinedChlorine, combinedChlorine } from './combined-chlorine.ts'
export { CONSTANT_SETS, withWahman } from './constants.ts'
export {
  type ContactTime,
  type ContactWater,
  contactTime,
  giardiaContactTime,
  ORGANISMS,
  type Organism,
} from './contact-time.ts'
export {
  batherDemandG,
  breakpointRatio,
  DARK_LOSS_PER_DAY_AT_28C,
  darkLossPerDay,
  NITROGEN_G_PER_BATHER_HOUR,
} from './demand.ts'
export { alkalinityAtPH, equilibrate, equilibrateAtPH, equilibrateOpen, type Solution } from './equilibrate.ts'
export {
  type EvaporationInput,
  evaporationMmPerDay,
  latentHeatKJPerKg,
  QUIET_WATER_FACTOR,
  saturationVapourPressureKPa,
  windAt2M,
} from './evaporation.ts'
export { excessChlorine } from './excess-chlorine.ts'
export {
  type ChlorineHold,
  faecalIncident,
  INCIDENT_STABILISER_LIMIT_MG_PER_L,
  type IncidentResponse,
  type IncidentWater,
} from './faecal-incident.ts'
export { FORMULA_NAMES, formulaDelta, formulaMassGPerMol, stoichiometryDelta } from './formulas.ts'
export { co2FluxMolPerM2Day, gasTransferVelocityMPerDay, saturatedCO2MolPerKg, schmidtNumberCO2 } from './gas.ts'
export { type IndexDifference, type IndexTerm, whyIndicesDiffer } from './index-difference.ts'
export { MG_CACO3_PER_EQ, MOLAR_MASSES_G_PER_MOL } from './masses.ts'
export { METALS, type Metal, type MetalFinding, type MetalsAdvice, metalsAdvice } from './metals.ts'
export { leastSeen, METHODS, type MethodError, type MethodSigma, methodSigma, type TestMethod } from './methods.ts'
export { type ExtraReading, PEOPLE_READING_NAMES, type PeopleReading, type PeopleReadingKey } from './people-reading.ts'
export { leastSaltMgPerL, READING_KEYS, readingOf, totalsOf } from './reading.ts'
export { readingFromPeople, type TakenReading, type ToldReading } from './reading-from-people.ts'
export {
  alkalinityFromBicarbonate,
  bicarbonateFromAlkalinity,
  calciumFromTotal,
  conductivityFromSolids,
  type HardnessReadings,
  type Likely,
  solidsFromConductivity,
} from './readings-people-have.ts'
export { RULE_IDS } from './rule-ids.ts'
export { DEFAULT_RULES, LOCAL_CODE_FIRST, RULES, type RuleFigures, type RuleProfile } from './rules.ts'
export { conductivityAt25, saltFromConductivity } from './salt-from-conductivity.ts'
export { clearSkyRadiation, daylightHours, extraterrestrialRadiation, solarRadiation } from './solar.ts'
export type { SourceStatus } from './sourcing.ts'
export {
  halfLifeInSunMin,
  NEAR_UV_ATTENUATION_PER_M,
  photolysisPerDay,
  photolysisRangePerDay,
  type SunlitBody,
} from './sunlight.ts'
export {
  type BreakpointDose,
  type Superchlorination,
  type SuperchlorinationWater,
  superchlorination,
} from './superchlorination.ts'
export { type TableIndex, tableIndex } from './table-index.ts'
export { DPD_LIMIT_MG_PER_L, TEST_TRAPS, type TestTrap, type TrapHere, trapsFor } from './test-traps.ts'
export {
  addTotals,
  atTemperature,
  concentrate,
  mix,
  PURE_WATER,
  scaleDelta,
  strongIonChargeEq,
  sumDeltas,
  TOTAL_KEYS,
} from './totals.ts'
export type {
  AlkalinityParts,
  Constants,
  Delta,
  Equilibrium,
  FullReading,
  LogGammas,
  LogK,
  Reaction,
  ReactionId,
  Species,
  TotalKey,
  Totals,
  WaterReading,
} from './types.ts'
