export { FAULT_KINDS, faultOf, type Fault, type FaultKind } from './fault.js';
