const SOLAR_CONSTANT_MJ_PER_M2_MIN = 0.082
const RADIANS = Math.PI / 180

interface Sun {
  readonly inverseDistance: number
  readonly declination: number
  readonly latitude: number
  /** Sunset hour angle [rad]; 0 in polar night, π in polar day. */
  readonly sunset: number
}

function sunOf(latitudeDeg: number, dayOfYear: number): Sun {
  const year = (2 * Math.PI * dayOfYear) / 365
  const declination = 0.409 * Math.sin(year - 1.39)
  const latitude = latitudeDeg * RADIANS
  const cosine = -Math.tan(latitude) * Math.tan(declination)
  return {
    inverseDistance: 1 + 0.033 * Math.cos(year),
    declination,
    latitude,
    sunset: Math.acos(Math.max(-1, Math.min(1, cosine))),
  }
}

/**
 * Radiation on a horizontal surface above the atmosphere [MJ/m² day].
 * Equation: (1440/π) 0.0820 dr (ωs sin φ sin δ + cos φ cos δ sin ωs).
 * Symbols: dr inverse relative distance; δ solar declination; φ latitude; ωs sunset hour angle.
 * Valid for: all latitudes; polar night gives 0.
 * Source: Allen et al. 1998, FAO Irrigation and Drainage Paper 56, eq. 21–25.
 * Accuracy: 0.5 %; 32.2 at 20° S on day 246 (its example 8).
 */
export function extraterrestrialRadiation(latitudeDeg: number, dayOfYear: number): number {
  const { inverseDistance, declination, latitude, sunset } = sunOf(latitudeDeg, dayOfYear)
  const angle =
    sunset * Math.sin(latitude) * Math.sin(declination) + Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset)
  return Math.max(0, (1440 / Math.PI) * SOLAR_CONSTANT_MJ_PER_M2_MIN * inverseDistance * angle)
}

/** Possible hours of sun [h]. Source: FAO-56 eq. 34, 24 ωs / π; 11.7 h at 20° S on day 246 (its example 9). */
export function daylightHours(latitudeDeg: number, dayOfYear: number): number {
  return (24 / Math.PI) * sunOf(latitudeDeg, dayOfYear).sunset
}

/** Radiation under a clear sky [MJ/m² day]. Source: FAO-56 eq. 37, (0.75 + 2e-5 z) Ra, z elevation [m]. */
export function clearSkyRadiation(raMJPerM2Day: number, elevationM: number): number {
  return (0.75 + 2e-5 * elevationM) * raMJPerM2Day
}

/** Radiation on the ground [MJ/m² day]. Source: FAO-56 eq. 35 (Ångström), (0.25 + 0.50 n/N) Ra, n/N sunshine fraction. */
export function solarRadiation(raMJPerM2Day: number, sunshineFraction: number): number {
  return (0.25 + 0.5 * sunshineFraction) * raMJPerM2Day
}
