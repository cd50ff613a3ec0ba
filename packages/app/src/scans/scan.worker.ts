import { expose } from 'comlink'
import { ScanThread } from './scan-thread.ts'

expose(new ScanThread())
