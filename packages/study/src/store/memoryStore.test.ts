import { memoryStore } from './memoryStore.ts'
import { storeContract } from './storeContract.ts'

storeContract('the store in memory', () => {
  const store = memoryStore()
  return { store, again: () => store }
})
