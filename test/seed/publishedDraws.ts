/**
 * Published rows that no invented figure may repeat: "off" watts of household devices metered in the field, as
 * product, max, average, min. Source: Floyd and Webber, "Leaking Electricity", Table 1, FSEC-PF-344-98, ACEEE 1998,
 * fsec.ucf.edu/en/publications/html/FSEC-PF-344-98/table.htm (V). The last row: television, quoted in 2007 from
 * standby.lbl.gov/data.html (V2).
 */
export const PUBLISHED_DRAWS: readonly (readonly [
  product: string,
  max: number,
  average: number,
  min: number,
])[] = [
  ['amplifier', 5.5, 1.4, 0.0],
  ['boom box', 7.7, 2.2, 0.7],
  ['cassette deck', 6.6, 2.7, 0.0],
  ['CD player', 8.0, 3.1, 0.0],
  ['clock radio', 3.2, 1.7, 0.9],
  ['DVD player', 7.1, 4.5, 1.6],
  ['equalizer', 5.9, 3.1, 0.0],
  ['mini-system', 29, 9.4, 1.3],
  ['powered speaker', 11, 4.6, 0.0],
  ['preamp/tuner', 3.2, 2.4, 1.4],
  ['rack system', 15, 3.2, 1.1],
  ['receiver', 5.9, 1.8, 0.0],
  ['tuner', 4.0, 2.0, 0.0],
  ['all audio', 29, 3.2, 0.0],
  ['garage-door opener', 5.4, 4.0, 3.2],
  ['security system', 22, 14, 5.4],
  ['heat pump', 65, 29.8, 0.1],
  ['room air conditioner', 0, 0.0, 0.0],
  ['microwave oven', 6.0, 3.0, 1.5],
  ['range', 4.1, 2.7, 0.9],
  ['refrigerator', 8.2, 6.1, 2.8],
  ['small kitchen appliance', 2.9, 1.8, 0.9],
  ['alarm clock', 2.0, 1.3, 0.7],
  ['baby monitor', 1.6, 1.2, 0.7],
  ['controls', 3.5, 1.9, 0.6],
  ['computer', 3.5, 2.0, 0.0],
  ['modem (external)', 1.8, 1.4, 1.0],
  ['television', 21.6, 5, 0],
]
