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

/** An object of any names that each hold a value of this kind; a list is refused here too. */
export function namesOf<const V extends v.GenericSchema>(
  key: v.GenericSchema<string, string>,
  value: V,
): v.RecordSchema<typeof key, V, undefined> {
  const schema = v.record(key, value)
  return {
    ...schema,
    '~run'(dataset, config) {
      if (!Array.isArray(dataset.value)) return schema['~run'](dataset, config)
      v._addIssue(this, 'type', dataset, config)
      return dataset as unknown as ReturnType<(typeof schema)['~run']>
    },
  }
}
