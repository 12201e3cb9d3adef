import * as v from 'valibot'

/**
 * An object of these entries that keeps whatever else it holds. Unlike the library's own it refuses a list, which would
 * otherwise pass for an object without entries and be lost.
 */
export function objectOf<const E extends v.ObjectEntries>(entries: E): v.LooseObjectSchema<E, undefined> {
  const schema = v.looseObject(entries)
  return {
    ...schema,
    '~run'(dataset, config) {
      if (!Array.isArray(dataset.value)) return schema['~run'](dataset, config)
      v._addIssue(this, 'type', dataset, config)
      return dataset as unknown as v.OutputDataset<never, v.LooseObjectIssue>
    },
  }
}
