/** Things that look like faults and are not. */
export const normalSurprises: string[] = [
  "After a few minutes of hard work at full lock the steering gets heavier: the module holds the current down until the motor has cooled. No code, no lamp, and it recovers by itself.",
  "Assist falls as road speed rises. A steering that is heavier on the road than in the car park works as designed.",
  "With the key on and the engine off there is no assist, and the steering lamp is lit: that is the lamp check.",
  "The battery feed shows full battery voltage with the key off. It is meant to be live always.",
  "A module without ignition feed or signal ground stores no code of its own. The codes are in its neighbours.",
  "A steering code that stops the assist stays until the key has been off, even if the fault went away.",
  "The sensor supply is 0 V with the key off. Its ground is there always.",
  "Motor target and actual current may differ by a few percent, and in protection by much more, with nothing broken.",
  "If the road speed message is missing, assist stays at its motorway level: heavy when parking, normal on the road.",
];

/** Shown in the bay and on printed sheets. */
export const cautions: string[] = [
  "The vehicle maker's procedure, your local rules and your workshop's instructions come before anything written here. Work on steering and airbags belongs to people licensed for it.",
  "Before you touch the steering wheel, the clock spring or anything yellow around the column: depower the airbag by the maker's procedure and wait the time it gives.",
  "Disconnect the battery negative first and connect it last. Key off, and let the modules fall asleep, before you unplug one.",
  "The battery feed of the steering is fused at 60 A. Use fused leads and jumpers, and never bridge the fuse with anything but a fuse.",
  "The motor can turn the wheel without warning. Keep hands, sleeves and tools clear of spokes, joints and belts when the engine runs.",
  "Back-probe beside the seal and do not spread contacts. Do not pierce insulation.",
  "If a car has orange high-voltage cables, do not probe them. This training car has none.",
  "With a motor feed at work, measure voltage drops. Do not put an ammeter's 10 A input into a 60 A circuit.",
  "A steering that has been repaired is road-tested by a qualified person in a safe place first. Simulated practice certifies nobody.",
];
