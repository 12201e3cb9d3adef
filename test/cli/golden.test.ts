import { describe, expect, test } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'
import basins from '../golden/basin/cases.json'
import { expectColumns, goldenRows } from '../water/golden.ts'

interface InverseWithTarget {
  readonly id: string
  readonly start: unknown
  readonly target: Readonly<Record<string, number>>
  readonly dose: Readonly<Record<string, number>>
}

/** Every row of the golden tables as it stands there, through the command line with the tables' own constants. */
function answers(verb: string, rows: readonly unknown[]) {
  const text = rows.map((row) => JSON.stringify(row)).join('\n')
  const { stdout, exitCode } = runCommandLine([verb, '-', '--constants', 'oracle'], { readInput: () => text, nowMs: 0 })
  expect(exitCode).toBe(0)
  return stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line))
}

describe('the command line measures the golden basins', () => {
  test('measure, every figure and every level (closed form or 40-digit quadrature; see the file’s provenance)', () => {
    const text = basins.cases.map(({ spec, expected }) =>
      JSON.stringify({ spec, levels: expected.levels.map(([at]) => at) }),
    )
    const { stdout, exitCode } = runCommandLine(['measure', '-'], { readInput: () => text.join('\n'), nowMs: 0 })
    expect(exitCode).toBe(0)
    const lines = stdout.trim().split('\n')
    expect(lines).toHaveLength(basins.cases.length)
    lines.forEach((line, i) => {
      const { bodies, systems } = JSON.parse(line)
      const { expected, id } = basins.cases[i]!
      // Lines and arcs are closed form; cubics and coves are integrated.
      const { outline, wall } = basins.cases[i]!.spec.bodies[0]!
      const isIntegrated = JSON.stringify(outline).includes('"c1"') || wall.kind === 'cove'
      const tolerance = isIntegrated ? 1e-7 : 1e-9
      const near = (value: number, truth: number) => expect(Math.abs(value / truth - 1), id).toBeLessThan(tolerance)
      near(bodies[0].volumeM3, expected.volumeM3)
      near(bodies[0].waterSurfaceM2, expected.waterSurfaceM2)
      near(bodies[0].wetted.totalM2, expected.wettedM2)
      near(bodies[0].perimeterM, expected.perimeterM)
      expected.levels.forEach(([, volumeM3], k) => {
        near(bodies[0].levels[k].volumeM3, volumeM3!)
        expect(bodies[0].errorBoundM3).toBeLessThan(1e-7 * expected.volumeM3)
      })
      expect(systems[0]).toMatchObject({ id: 'pool', volumeM3: bodies[0].volumeM3 })
    })
  })

  test.each([
    ['bodies[0].floor', { floor: { kind: 'tiered', edgeDepthM: 1 } }],
    ['bodies[0].wall', { wall: { kind: 'leaning', run: 0.25 } }],
    ['bodies[0].features[0]', { features: [{ kind: 'slide', path: basins.cases[0]!.spec.bodies[0]!.outline }] }],
  ])('a kind that is not known is a problem at %s, not a guess', (path, part) => {
    const { spec } = basins.cases[0]!
    const other = { ...spec, bodies: [{ ...spec.bodies[0]!, ...part }] }
    const { stdout, exitCode } = runCommandLine(['measure', '-'], { readInput: () => JSON.stringify(other), nowMs: 0 })
    const { problem } = JSON.parse(stdout)
    expect(exitCode).toBe(2)
    expect(problem.path).toContain(path)
    for (const key of ['code', 'what', 'why', 'hint']) expect(problem[key]).not.toBe('')
  })
})

describe('the command line gives the waters that USGS PHREEQC 3.6.3 gives', () => {
  test('speciate', () => {
    const rows = goldenRows('speciation')
    answers('speciate', rows).forEach(({ output }, i) => {
      expectColumns(output, rows[i]!.output, rows[i]!.id)
    })
  })

  test('dose, with the products by the names of the table', () => {
    const rows = goldenRows('dose_reactions')
    answers('dose', rows).forEach((answer, i) => {
      expectColumns(answer.after_closed, rows[i]!.after_closed, rows[i]!.id)
      expectColumns(answer.after_open_log10_pCO2_minus3p38, rows[i]!.after_open_log10_pCO2_minus3p38, rows[i]!.id)
    })
  })

  test('target, with the golden doses that acid, bicarbonate and soda ash can reach', () => {
    const rows = (goldenRows('inverse') as unknown as readonly InverseWithTarget[]).filter(
      (row) => 'muriatic_acid_31p45_g_per_m3' in row.dose && !('borate_mg_per_L_as_B' in row.target),
    )
    expect(rows.length).toBeGreaterThan(9)
    const lines = rows.map(({ start, target }) => ({ start, target, products: ['muriatic acid 31.45 % w/w HCl'] }))
    answers('target', lines).forEach(({ doses, after_closed }, i) => {
      const row = rows[i]!
      const truth = row.dose['muriatic_acid_31p45_g_per_m3']!
      expect(Math.abs(doses[0].gPerM3 / truth - 1), row.id).toBeLessThan(0.01)
      expect(Math.abs(after_closed.pH - row.target['pH']!), row.id).toBeLessThan(1e-6)
    })
  })

  test('blend', () => {
    const rows = goldenRows('blending')
    answers('blend', rows).forEach(({ output }, i) => {
      expectColumns(output, rows[i]!.output, rows[i]!.id)
    })
  })
})
