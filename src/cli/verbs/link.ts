import { fail, ok } from '../../base/index.ts'
import { linkOf, specFromLink } from '../../document/index.ts'
import { specOfInput } from '../spec-input.ts'
import type { Verb } from '../verb.ts'

export const link: Verb = {
  id: 'link',
  summary: 'SPEC → {"url"}',
  run: (input, options) => {
    const spec = specOfInput(input)
    return spec.ok ? ok({ url: linkOf(spec.value, options.baseUrl) }) : spec
  },
}

export const unlink: Verb = {
  id: 'unlink',
  summary: 'a URL as a JSON string → SPEC',
  run: (input) => {
    if (typeof input === 'string') return specFromLink(input)
    return fail({
      code: 'not-a-url',
      path: '',
      what: 'The line must be a link, as a JSON string.',
      why: 'The plan is inside the link.',
      hint: 'Put the whole link in double quotes.',
    })
  },
}
