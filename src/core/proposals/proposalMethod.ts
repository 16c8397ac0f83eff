/** How proposals are made, in words for whoever decides on one. */
export const PROPOSAL_METHOD =
  'Percentiles over devices by definition 8 of Hyndman and Fan (1996), each with the interval between two readings in their order ' +
  'that holds the percentile with the stated probability whatever the distribution is (order statistics, exact binomial); an end is ' +
  'open (null) where there are too few readings to say. One reading of real power for each device, that of the latest visit that read ' +
  'it. The intervals speak of chance alone: households that measure are not all households, and devices of one household are alike.'

/** When a proposal is open again that an editor answered; openAgainAt.ts reckons it. */
export const OPEN_AGAIN_RULE =
  'A proposal that was accepted or rejected is open again once there are a quarter more readings than then, and at least eight more.'
