import type { RestContext } from '../restContext.ts'
import type { RestApp } from '../submitted.ts'
import { deleteInventory } from './deleteInventory.ts'
import { getInventories } from './getInventories.ts'
import { getInventory } from './getInventory.ts'
import { getInventoryExport } from './getInventoryExport.ts'
import { getRemadeEstimate } from './getRemadeEstimate.ts'
import { getStoredEstimate } from './getStoredEstimate.ts'
import { getStoredEstimates } from './getStoredEstimates.ts'
import { patchInventory } from './patchInventory.ts'
import { postInventory } from './postInventory.ts'
import { postInventoryPlan } from './postInventoryPlan.ts'
import { postInventoryVerification } from './postInventoryVerification.ts'
import { postStoredEstimate } from './postStoredEstimate.ts'
import { postVisit } from './postVisit.ts'

/** The routes of households and of the estimates kept of them. */
export const INVENTORY_ROUTES: readonly ((app: RestApp, context: RestContext) => void)[] = [
  postInventory,
  getInventories,
  getInventory,
  patchInventory,
  deleteInventory,
  postVisit,
  getInventoryExport,
  postStoredEstimate,
  getStoredEstimates,
  getStoredEstimate,
  getRemadeEstimate,
  postInventoryPlan,
  postInventoryVerification,
]
