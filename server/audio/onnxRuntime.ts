/** The runtime of all models; imported from here alone, so that it is silenced first. */
import './noTelemetry.ts';
export * from 'onnxruntime-node';
