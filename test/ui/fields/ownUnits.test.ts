import { describe, expect, test } from 'vitest'
import { START_MODES } from '../../../src/plan/index.ts'
import { inOwnUnits } from '../../../src/ui/fields/ownUnits.ts'

/** A number and its unit are held together by a space that does not break. */
const plain = (words: string) => words.replaceAll('\u00a0', ' ')

describe('a sentence of the sums in the owner’s units', () => {
  test.each([
    ['averaged over 1.6 m of depth.', 'averaged over 5′ 3″ of depth.'],
    ['14 % a day at 28 °C, doubling every 10 °C.', '14 % a day at 82 °F, doubling every 18 °F.'],
    ['0.5 mm a day evaporate', '0.020 in/d evaporate'],
    ['the level read to 10 mm.', 'the level read to ⅜″.'],
    ['The range also covers 2 to 5 °C.', 'The range also covers 36 °F to 41 °F.'],
    ['between 2 and 4 m', 'between 6′ 7″ and 13′ 1″'],
    ['more than 10 km across.', 'more than 32,800 ft across.'],
    ['Not less than 0 m.', 'Not less than 0″.'],
    ['at pH 7.5 and 25 °C', 'at pH 7.5 and 77 °F'],
    ['Put 10 L of pool water', 'Put 2.6 gal of pool water'],
    ['12 m³ of the pool’s 78 m³', '3,170 gal of the pool’s 20,600 gal'],
  ])('%j reads %j in US units, and stays as it is in metric ones', (metric, us) => {
    expect(plain(inOwnUnits(metric, 'us'))).toBe(us)
    expect(inOwnUnits(metric, 'metric')).toBe(metric)
  })

  test('imperial gallons go with degrees Celsius', () => {
    expect(plain(inOwnUnits('10 L at 28 °C, every 10 °C', 'imperial'))).toBe('2.20 imp gal at 28 °C, every 10 °C')
  })

  test('strengths, rates of a source and chemical names keep theirs', () => {
    for (const words of [
      '0.5 mg/L of chlorine',
      '5.4 MJ/m² on the water',
      '125 g of chlorine per litre',
      'CO2 and 2 m² of it',
    ])
      expect(inOwnUnits(words, 'us')).toBe(words)
  })

  test('no start speaks of metres, litres or degrees Celsius to an owner with US units', () => {
    for (const mode of START_MODES.rows)
      for (const words of [mode.when, ...mode.inputs.flatMap(({ help }) => help ?? [])])
        expect(inOwnUnits(words, 'us'), mode.id).not.toMatch(/\d (mm|cm|m|m³|L|°C)(?![\w/])/)
  })
})
