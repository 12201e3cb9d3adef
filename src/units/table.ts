import { table } from '../base/index.ts'
import type { Unit } from './types.ts'

const FOOT = 0.3048
const INCH = 0.0254
const POUND = 0.45359237
const US_GALLON = 0.003785411784
const IMPERIAL_GALLON = 0.00454609
const GRAIN_MG = (POUND * 1e6) / 7000
const L_PER_M3 = 1000
// molar masses [g/mol], IUPAC abridged standard atomic weights
const CALCIUM_CARBONATE = 100.0869
const CALCIUM_OXIDE = 56.0774
const CALCIUM = 40.078
const BICARBONATE = 61.0168
/** A German degree is 10 mg/L of CaO [mg/L as CaCO3]. */
const GERMAN_DEGREE = (10 * CALCIUM_CARBONATE) / CALCIUM_OXIDE
/** A French degree is 10 mg/L as CaCO3. */
const FRENCH_DEGREE = 10
/** A grain per US gallon, and the English (Clark) degree, a grain per imperial gallon [mg/L as CaCO3]. */
const GRAIN_PER_US_GALLON = GRAIN_MG / (US_GALLON * L_PER_M3)
const GRAIN_PER_IMPERIAL_GALLON = GRAIN_MG / (IMPERIAL_GALLON * L_PER_M3)

/**
 * Every unit that is read or printed, one row each. The factors are exact by definition: inch and pound by the
 * international agreement of 1959, US gallon = 231 in³ (NIST Handbook 44, appendix C), imperial gallon = 4.54609 L
 * (UK Weights and Measures Act 1985). Degrees of hardness by their definitions (DIN 38409-6 and ISO 6059, from memory); a mole
 * of hardness is a mole of calcium, two of charge, and a mole of alkalinity is one of acid (acid capacity to pH 4.3).
 */
// biome-ignore format: one row a unit
export const UNITS = table<Unit>([
  { id: 'm', label: 'm', kind: 'length', toSI: 1, world: 'metric', names: ['m', 'metre', 'metres', 'meter', 'meters'], rest: 'cm' },
  { id: 'cm', label: 'cm', kind: 'length', toSI: 0.01, world: 'metric', names: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'] },
  { id: 'mm', label: 'mm', kind: 'length', toSI: 0.001, world: 'metric', names: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'] },
  { id: 'km', label: 'km', kind: 'length', toSI: 1000, world: 'metric', names: ['km', 'kilometre', 'kilometres', 'kilometer', 'kilometers'] },
  { id: 'ft', label: 'ft', kind: 'length', toSI: FOOT, world: 'any', names: ['ft', 'foot', 'feet', "'"], rest: 'in' },
  { id: 'in', label: 'in', kind: 'length', toSI: INCH, world: 'any', names: ['in', 'inch', 'inches', '"'] },
  { id: 'yd', label: 'yd', kind: 'length', toSI: 0.9144, world: 'any', names: ['yd', 'yds', 'yard', 'yards'] },

  { id: 'm2', label: 'm²', kind: 'area', toSI: 1, world: 'metric', names: ['m²', 'sq m', 'square metres', 'square meters'] },
  { id: 'ft2', label: 'ft²', kind: 'area', toSI: FOOT * FOOT, world: 'any', names: ['ft²', 'sq ft', 'sqft', 'square feet'] },
  { id: 'yd2', label: 'yd²', kind: 'area', toSI: 0.9144 * 0.9144, world: 'any', names: ['yd²', 'sq yd', 'square yards'] },

  { id: 'm3', label: 'm³', kind: 'volume', toSI: 1, world: 'metric', names: ['m³', 'cu m', 'cubic metres', 'cubic meters'] },
  { id: 'L', label: 'L', kind: 'volume', toSI: 1e-3, world: 'metric', names: ['l', 'litre', 'litres', 'liter', 'liters'] },
  { id: 'mL', label: 'mL', kind: 'volume', toSI: 1e-6, world: 'metric', names: ['ml', 'millilitre', 'millilitres', 'milliliter', 'milliliters'] },
  { id: 'ft3', label: 'ft³', kind: 'volume', toSI: FOOT ** 3, world: 'any', names: ['ft³', 'cu ft', 'cubic feet'] },
  { id: 'gal', label: 'gal', long: 'US gallons', kind: 'volume', toSI: US_GALLON, world: 'us', names: ['gal', 'gals', 'gallon', 'gallons', 'us gal', 'gal us', 'us gallons'] },
  { id: 'qt', label: 'qt (US)', long: 'US quarts', kind: 'volume', toSI: US_GALLON / 4, world: 'us', names: ['qt', 'qts', 'quart', 'quarts', 'us qt', 'qt us'] },
  { id: 'pt', label: 'pt (US)', long: 'US pints', kind: 'volume', toSI: US_GALLON / 8, world: 'us', names: ['pt', 'pint', 'pints', 'us pt', 'pt us'] },
  { id: 'floz', label: 'fl oz (US)', long: 'US fluid ounces', kind: 'volume', toSI: US_GALLON / 128, world: 'us', names: ['fl oz', 'floz', 'fluid ounce', 'fluid ounces', 'fl oz us', 'us fl oz', 'us fluid ounces', 'oz', 'ounce', 'ounces'] },
  { id: 'impgal', label: 'imp gal', long: 'imperial gallons', kind: 'volume', toSI: IMPERIAL_GALLON, world: 'imperial', names: ['gal', 'gals', 'gallon', 'gallons', 'imp gal', 'gal imp', 'imperial gal', 'imperial gallons', 'uk gal'] },
  { id: 'impqt', label: 'qt (imp)', long: 'imperial quarts', kind: 'volume', toSI: IMPERIAL_GALLON / 4, world: 'imperial', names: ['qt', 'qts', 'quart', 'quarts', 'imp qt', 'qt imp'] },
  { id: 'imppt', label: 'pt (imp)', long: 'imperial pints', kind: 'volume', toSI: IMPERIAL_GALLON / 8, world: 'imperial', names: ['pt', 'pint', 'pints', 'imp pt', 'pt imp'] },
  { id: 'impfloz', label: 'fl oz (imp)', long: 'imperial fluid ounces', kind: 'volume', toSI: IMPERIAL_GALLON / 160, world: 'imperial', names: ['fl oz', 'floz', 'fluid ounce', 'fluid ounces', 'fl oz imp', 'imp fl oz', 'imperial fluid ounces', 'oz', 'ounce', 'ounces'] },

  { id: 'kg', label: 'kg', kind: 'mass', toSI: 1, world: 'metric', names: ['kg', 'kilo', 'kilos', 'kilogram', 'kilograms'] },
  { id: 'g', label: 'g', kind: 'mass', toSI: 1e-3, world: 'metric', names: ['g', 'gram', 'grams', 'gramme', 'grammes'] },
  { id: 'lb', label: 'lb', long: 'lb', kind: 'mass', toSI: POUND, world: 'any', names: ['lb', 'lbs', 'pound', 'pounds'], rest: 'oz' },
  { id: 'oz', label: 'oz wt', long: 'oz by weight', kind: 'mass', toSI: POUND / 16, world: 'any', names: ['oz', 'ozs', 'ounce', 'ounces', 'oz wt', 'wt oz', 'oz weight', 'oz by weight', 'oz av'] },

  { id: 'C', label: '°C', kind: 'temperature', toSI: 1, offset: 0, world: 'metric', names: ['°c', 'c', 'deg c', 'degc', 'celsius', 'degrees c', 'degrees celsius', '° c'] },
  { id: 'F', label: '°F', kind: 'temperature', toSI: 5 / 9, offset: -160 / 9, world: 'any', names: ['°f', 'f', 'deg f', 'degf', 'fahrenheit', 'degrees f', 'degrees fahrenheit', '° f'] },

  { id: 'mgL', label: 'mg/L', kind: 'concentration', toSI: 1, world: 'any', names: ['mg/l', 'mg per l', 'mg per litre', 'mg per liter', 'ppm', 'g/m³'] },

  { id: 'hardnessMgL', label: 'mg/L', long: 'mg/L as CaCO₃', kind: 'hardness', toSI: 1, world: 'any', names: ['mg/l', 'mg per l', 'mg per litre', 'mg per liter', 'ppm', 'g/m³', 'mg/l as caco₃', 'mg/l caco₃', 'ppm as caco₃', 'ppm caco₃'] },
  { id: 'hardnessDH', label: '°dH', long: 'German degrees', kind: 'hardness', toSI: GERMAN_DEGREE, world: 'any', names: ['°dh', 'dh', '° dh', '°d', 'dgh', '°dgh', 'german degrees'] },
  { id: 'hardnessFH', label: '°f', long: 'French degrees', kind: 'hardness', toSI: FRENCH_DEGREE, world: 'any', names: ['°f', '° f', '°fh', 'fh', '°th', 'french degrees'] },
  { id: 'hardnessE', label: '°e', long: 'English degrees', kind: 'hardness', toSI: GRAIN_PER_IMPERIAL_GALLON, world: 'imperial', names: ['°e', '° e', '°eh', '°clark', 'clark', 'clark degrees', 'english degrees', 'gpg', 'grains per gallon'] },
  { id: 'hardnessGpg', label: 'gpg', long: 'grains per US gallon', kind: 'hardness', toSI: GRAIN_PER_US_GALLON, world: 'us', names: ['gpg', 'gr/gal', 'grains/gal', 'grains per gallon', 'grains per us gallon'] },
  { id: 'hardnessMmolL', label: 'mmol/L', kind: 'hardness', toSI: CALCIUM_CARBONATE, world: 'any', names: ['mmol/l', 'mmol per l', 'mmol per litre', 'mmol'] },
  { id: 'hardnessMeqL', label: 'meq/L', kind: 'hardness', toSI: CALCIUM_CARBONATE / 2, world: 'any', names: ['meq/l', 'meq', 'mval/l', 'mval'] },
  { id: 'hardnessCa', label: 'mg/L Ca', kind: 'hardness', toSI: CALCIUM_CARBONATE / CALCIUM, world: 'any', names: ['mg/l ca', 'mg/l as ca', 'ppm ca', 'mg ca/l'] },

  { id: 'alkalinityMgL', label: 'mg/L', long: 'mg/L as CaCO₃', kind: 'alkalinity', toSI: 1, world: 'any', names: ['mg/l', 'mg per l', 'mg per litre', 'mg per liter', 'ppm', 'g/m³', 'mg/l as caco₃', 'mg/l caco₃', 'ppm as caco₃', 'ppm caco₃'] },
  { id: 'alkalinityHCO3', label: 'mg/L HCO₃⁻', kind: 'alkalinity', toSI: CALCIUM_CARBONATE / 2 / BICARBONATE, world: 'any', names: ['mg/l hco₃', 'mg/l as hco₃', 'ppm hco₃', 'mg/l bicarbonate', 'mg hco₃/l'] },
  { id: 'alkalinityMmolL', label: 'mmol/L', kind: 'alkalinity', toSI: CALCIUM_CARBONATE / 2, world: 'any', names: ['mmol/l', 'mmol per l', 'mmol per litre', 'mmol', 'meq/l', 'meq', 'mval/l', 'mval'] },
  { id: 'alkalinityDH', label: '°dH', long: 'German degrees', kind: 'alkalinity', toSI: GERMAN_DEGREE, world: 'any', names: ['°dh', 'dh', '° dh', '°d', '°kh', 'kh', 'dkh', '°dkh', 'german degrees'] },
  { id: 'alkalinityFH', label: '°f', long: 'French degrees', kind: 'alkalinity', toSI: FRENCH_DEGREE, world: 'any', names: ['°f', '° f', '°fh', 'fh', '°tac', 'french degrees'] },
  { id: 'alkalinityE', label: '°e', long: 'English degrees', kind: 'alkalinity', toSI: GRAIN_PER_IMPERIAL_GALLON, world: 'imperial', names: ['°e', '° e', '°clark', 'clark', 'clark degrees', 'english degrees', 'gpg', 'grains per gallon'] },
  { id: 'alkalinityGpg', label: 'gpg', long: 'grains per US gallon', kind: 'alkalinity', toSI: GRAIN_PER_US_GALLON, world: 'us', names: ['gpg', 'gr/gal', 'grains/gal', 'grains per gallon', 'grains per us gallon'] },

  { id: 'uScm', label: 'µS/cm', kind: 'conductivity', toSI: 1, world: 'any', names: ['μs/cm', 'us/cm', 'μs', 'us', 'microsiemens', 'microsiemens per cm'] },
  { id: 'mScm', label: 'mS/cm', kind: 'conductivity', toSI: 1000, world: 'any', names: ['ms/cm', 'ms', 'millisiemens', 'millisiemens per cm', 'ds/m'] },
  { id: 'Sm', label: 'S/m', kind: 'conductivity', toSI: 10000, world: 'any', names: ['s/m', 'siemens per m', 'siemens per metre'] },

  { id: 'm3h', label: 'm³/h', long: 'm³ an hour', kind: 'flow', toSI: 1, world: 'metric', names: ['m³/h', 'm³/hr', 'm³ per hour'] },
  { id: 'Lmin', label: 'L/min', long: 'L a minute', kind: 'flow', toSI: 0.06, world: 'metric', names: ['l/min', 'lpm', 'l per minute'] },
  { id: 'gpm', label: 'gal/min', long: 'gal a minute', kind: 'flow', toSI: US_GALLON * 60, world: 'us', names: ['gal/min', 'gpm', 'gal per minute', 'gallons per minute', 'us gal/min', 'us gpm'] },
  { id: 'gph', label: 'gal/h', long: 'gal an hour', kind: 'flow', toSI: US_GALLON, world: 'us', names: ['gal/h', 'gal/hr', 'gph', 'gallons per hour'] },
  { id: 'impgpm', label: 'imp gal/min', long: 'imperial gal a minute', kind: 'flow', toSI: IMPERIAL_GALLON * 60, world: 'imperial', names: ['gal/min', 'gpm', 'gal per minute', 'gallons per minute', 'imp gal/min', 'imp gpm'] },
  { id: 'impgph', label: 'imp gal/h', long: 'imperial gal an hour', kind: 'flow', toSI: IMPERIAL_GALLON, world: 'imperial', names: ['gal/h', 'gal/hr', 'gph', 'gallons per hour', 'imp gal/h'] },

  { id: 'mmd', label: 'mm/d', long: 'mm a day', kind: 'areaRate', toSI: 1, world: 'metric', names: ['mm/d', 'mm/day', 'mm a day', 'mm per day'] },
  { id: 'ind', label: 'in/d', long: 'in a day', kind: 'areaRate', toSI: 25.4, world: 'any', names: ['in/d', 'in/day', 'in a day', 'inches a day', 'inches per day', '"/day'] },

  { id: 'm3cm', label: 'm³/cm', long: 'm³ per cm', kind: 'volumePerLevel', toSI: 100, world: 'metric', names: ['m³/cm', 'm³ per cm'] },
  { id: 'galin', label: 'gal/in', long: 'gal per inch', kind: 'volumePerLevel', toSI: US_GALLON / INCH, world: 'us', names: ['gal/in', 'gal per in', 'gal per inch'] },
  { id: 'impgalin', label: 'imp gal/in', long: 'imperial gal per inch', kind: 'volumePerLevel', toSI: IMPERIAL_GALLON / INCH, world: 'imperial', names: ['gal/in', 'gal per in', 'gal per inch', 'imp gal/in'] },

  { id: 'kWh', label: 'kWh', kind: 'energy', toSI: 1, world: 'any', names: ['kwh', 'kw h'] },
  { id: 'MJ', label: 'MJ', kind: 'energy', toSI: 1 / 3.6, world: 'any', names: ['mj'] },

  { id: 'h', label: 'h', long: 'hours', kind: 'duration', toSI: 1, world: 'any', names: ['h', 'hr', 'hrs', 'hour', 'hours'], rest: 'min' },
  { id: 'min', label: 'min', long: 'minutes', kind: 'duration', toSI: 1 / 60, world: 'any', names: ['min', 'mins', 'minute', 'minutes'] },
  { id: 'd', label: 'd', long: 'days', kind: 'duration', toSI: 24, world: 'any', names: ['d', 'day', 'days'], rest: 'h' },

  { id: 'ms', label: 'm/s', kind: 'wind', toSI: 1, world: 'metric', names: ['m/s', 'm per second'] },
  { id: 'kmh', label: 'km/h', kind: 'wind', toSI: 1 / 3.6, world: 'metric', names: ['km/h', 'kph', 'kmh'] },
  { id: 'mph', label: 'mph', kind: 'wind', toSI: 0.44704, world: 'any', names: ['mph', 'mi/h', 'miles per hour'] },
  { id: 'kn', label: 'kn', kind: 'wind', toSI: 1852 / 3600, world: 'any', names: ['kn', 'kt', 'knots'] },

  { id: 'percent', label: '%', kind: 'percent', toSI: 1, world: 'any', names: ['%', 'percent', 'per cent', 'pct'] },
  { id: 'degree', label: '°', kind: 'angle', toSI: 1, world: 'any', names: ['°', 'deg', 'degree', 'degrees'] },
  { id: 'one', label: '', kind: 'none', toSI: 1, world: 'any', names: [] },
])
