export interface Caution {
  readonly title: string
  readonly text: string
  /** Where it can be looked up, if anywhere. */
  readonly source?: string | undefined
}

/** What the place itself can do to people. Always in sight and on every print. */
export const SITE_CAUTIONS: readonly Caution[] = [
  {
    title: 'Diving',
    text: 'No depth in this plan says that diving is safe. A safe dive needs a whole diving envelope: depth, length, slope and clear height together, by the local code. Depth alone never makes it so.',
  },
  {
    title: 'Drains',
    text: 'Every suction outlet needs a cover that is unbroken, in date and made to the standard in force, and either two outlets far enough apart or another protection against holding a body fast. With a cover missing or cracked, nobody goes in and the pump stays off.',
    source:
      'Virginia Graeme Baker Pool and Spa Safety Act, 15 USC 8001–8008; 16 CFR 1450; drain outlets less than 3 ft apart need a second protection.',
  },
  {
    title: 'Barrier',
    text: 'A fence on all sides and a gate that closes and latches by itself keep a small child out when nobody looks. They add to watching, never replace it.',
  },
  {
    title: 'Electricity',
    text: 'Bonding, and protection by GFCI (RCD), are a licensed electrician’s work, also for lights, pumps and heaters that are put in later.',
  },
  {
    title: 'Covers',
    text: 'A bubble or solar cover holds nobody: whoever steps on it sinks under it and can’t be seen. Take the whole cover off before anyone goes in, and leave no water standing on it.',
  },
  {
    title: 'Code and trade first',
    text: 'Local code, the label of each product and the licensed trades come before anything on this sheet. It is a reckoning, not a permit or an inspection.',
  },
]
