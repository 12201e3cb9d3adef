/**
 * Density of pure water at 1 atm [kg/L].
 * Equation: rational fit in t [°C].
 * Valid for: 0 to 100 °C.
 * Source: Kell 1975, J. Chem. Eng. Data 20:97 (coefficients from memory).
 * Accuracy: 1e-5; 0.99705 at 25 °C.
 */
export function waterDensityKgPerL(temperatureC: number): number {
  const t = temperatureC
  const top =
    999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))))
  return top / (1 + 16.87985e-3 * t) / 1000
}

/**
 * Relative permittivity of pure water [-].
 * Equation: 87.740 − 0.40008 t + 9.398e-4 t² − 1.41e-6 t³, t [°C].
 * Valid for: 0 to 100 °C.
 * Source: Malmberg & Maryott 1956, J. Res. NBS 56:1 (from memory).
 * Accuracy: 0.1; 78.30 at 25 °C.
 */
export function permittivity(temperatureC: number): number {
  const t = temperatureC
  return 87.74 + t * (-0.40008 + t * (9.398e-4 - t * 1.41e-6))
}

/**
 * Debye–Hückel A [kg½/mol½] and B [kg½/(mol½ Å)].
 * Equation: A = 1.82483e6 √ρ / (ε T)^1.5; B = 50.2916 √(ρ / (ε T)).
 * Symbols: ρ density [kg/L]; ε relative permittivity; T [K].
 * Valid for: 0 to 60 °C.
 * Source: Truesdell & Jones 1974, J. Res. USGS 2:233 (from memory).
 * Accuracy: A 0.5092 at 25 °C within 0.002.
 */
export function debyeHuckel(temperatureC: number): { readonly a: number; readonly b: number } {
  const density = waterDensityKgPerL(temperatureC)
  const epsilonT = permittivity(temperatureC) * (temperatureC + 273.15)
  return {
    a: (1.82483e6 * Math.sqrt(density)) / epsilonT ** 1.5,
    b: 50.2916 * Math.sqrt(density / epsilonT),
  }
}
