import { expose } from 'comlink'
import { Service } from './service.ts'

expose(new Service())
