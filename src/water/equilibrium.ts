import { bufferCapacityOf } from './buffer.ts'
import { conductanceMicroSPerCm } from './conductance.ts'
import { MG_CACO3_PER_EQ, MOLAR_MASSES_G_PER_MOL, mgPerLOf } from './masses.ts'
import { alkalinityOf } from './solve.ts'
import type { AlkalinityParts, Equilibrium, Species } from './types.ts'
import type { Workspace } from './workspace.ts'

/** The solved workspace as the immutable thing others read. */
export function equilibriumOf(w: Workspace, iterations: number): Equilibrium {
  const species = speciesOf(w)
  const logMonovalent = Math.log10(w.g1)
  const asCl2 = MOLAR_MASSES_G_PER_MOL.chlorineAsCl2
  const bound =
    species.h2clcy + species.hclcy + species.clcy2 + 2 * (species.hcl2cy + species.cl2cy) + 3 * species.cl3cy
  return {
    pH: w.pH,
    temperatureC: w.conditions.temperatureC,
    species,
    ionicStrength: w.ionic,
    activeChlorineMgPerL: mgPerLOf(species.hocl, asCl2),
    hypochloriteMgPerL: mgPerLOf(species.ocl, asCl2),
    boundChlorineMgPerL: mgPerLOf(bound, asCl2),
    calciteSI: Math.log10(species.ca * w.gCa * species.co3 * w.gCO3) - w.conditions.log10KCalcite,
    log10PCO2Atm: Math.log10(species.co2 * w.gCO2) - w.conditions.log10KGas,
    log10HenryMolPerKgAtm: w.conditions.log10KGas - Math.log10(w.gCO2),
    bufferCapacity: bufferCapacityOf(w),
    alkalinity: partsOf(w, species),
    co2MgPerL: mgPerLOf(species.co2, MOLAR_MASSES_G_PER_MOL.carbonDioxide),
    conductanceMicroSPerCm: conductanceMicroSPerCm(species, w.ionic, w.conditions.temperatureC),
    logGammas: {
      hco3: Math.log10(w.gHCO3),
      co3: Math.log10(w.gCO3),
      ca: Math.log10(w.gCa),
      h: Math.log10(w.gH),
      monovalent: logMonovalent,
      neutral: Math.log10(w.g0),
    },
    residual: residualOf(w, species),
    iterations,
  }
}

function speciesOf(w: Workspace): Species {
  const { h, u, x, y, ca, mg, na, k, so4 } = w
  const co3 = w.rb * u
  const hclcy = w.h9 * x * y
  const cl2cy = w.h7 * x * hclcy
  const hcl2cy = (cl2cy * h) / w.k2
  return {
    h: h / w.gH,
    oh: w.kw / h,
    co2: w.ra * u,
    hco3: u,
    co3,
    ca,
    mg,
    na,
    k,
    li: w.lithium,
    cl: w.chloride,
    so4,
    hso4: w.kHso4 * h * so4,
    caHco3: w.kCaHco3 * ca * u,
    caCo3: w.kCaCo3 * ca * co3,
    caSo4: w.kCaSo4 * ca * so4,
    caOh: (w.kCaOh / h) * ca,
    mgHco3: w.kMgHco3 * mg * u,
    mgCo3: w.kMgCo3 * mg * co3,
    mgSo4: w.kMgSo4 * mg * so4,
    mgOh: (w.kMgOh / h) * mg,
    naHco3: w.kNaHco3 * na * u,
    naSo4: w.kNaSo4 * na * so4,
    kSo4: w.kKSo4 * k * so4,
    boh3: w.boron - w.borate,
    boh4: w.borate,
    hocl: x,
    ocl: w.oclAlk,
    h3cy: (h / w.k6) * y,
    h2cy: y,
    hcy2: (w.k10 / h) * y,
    cy3: ((w.k10 * w.k12) / (h * h)) * y,
    h2clcy: (hclcy * h) / w.k4,
    hclcy,
    clcy2: (w.k8 / h) * hclcy,
    hcl2cy,
    cl2cy,
    cl3cy: w.h1 * x * hcl2cy,
  }
}

function partsOf(w: Workspace, s: Species): AlkalinityParts {
  const cyanurate = s.h2cy + 2 * s.hcy2 + 3 * s.cy3
  return {
    carbonate: w.u * (1 + w.e1 + 2 * w.e2) * MG_CACO3_PER_EQ,
    borate: w.borate * MG_CACO3_PER_EQ,
    cyanurate: cyanurate * MG_CACO3_PER_EQ,
    chlorinatedCyanurate: (w.cyAlk - cyanurate) * MG_CACO3_PER_EQ,
    hypochlorite: w.oclAlk * MG_CACO3_PER_EQ,
    hydroxide: w.hydroxide * MG_CACO3_PER_EQ,
    total: alkalinityOf(w) * MG_CACO3_PER_EQ,
  }
}

/** Largest relative gap between a held total and the sum of its species. */
function residualOf(w: Workspace, s: Species): number {
  const alkalinityScale = Math.abs(w.alkalinity) + w.u + w.borate + w.cyAlk + s.oh + s.h
  const rings = s.h3cy + s.h2cy + s.hcy2 + s.cy3 + s.h2clcy + s.hclcy + s.clcy2 + s.hcl2cy + s.cl2cy + s.cl3cy
  const chlorine = s.hocl + s.ocl + s.h2clcy + s.hclcy + s.clcy2 + 2 * (s.hcl2cy + s.cl2cy) + 3 * s.cl3cy
  return Math.max(
    Math.abs(alkalinityOf(w) - w.alkalinity) / alkalinityScale,
    gap(s.co2 + s.hco3 + s.co3 + s.caHco3 + s.caCo3 + s.mgHco3 + s.mgCo3 + s.naHco3, w.carbon),
    gap(s.ca + s.caHco3 + s.caCo3 + s.caSo4 + s.caOh, w.calcium),
    gap(s.mg + s.mgHco3 + s.mgCo3 + s.mgSo4 + s.mgOh, w.magnesium),
    gap(s.na + s.naHco3 + s.naSo4, w.sodium),
    gap(s.k + s.kSo4, w.potassium),
    gap(s.so4 + s.hso4 + s.caSo4 + s.mgSo4 + s.naSo4 + s.kSo4, w.sulfate),
    gap(rings, w.cyanurate),
    gap(chlorine, w.chlorine),
  )
}

function gap(sum: number, total: number): number {
  return total === 0 ? Math.abs(sum) : Math.abs(sum - total) / total
}
