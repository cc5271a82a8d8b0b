import { storeContract } from '../../store-contract.ts';
import { fileStore } from './stores.ts';

storeContract('a file', (folder) => fileStore(folder));
