/**
 * From version 1.29 on, ONNX Runtime's own builds for Linux and macOS report what is run with them to its maker (models, versions, times, a
 * number for the machine), unless they are told not to before they start: github.com/microsoft/onnxruntime, pull request 27379. Nothing leaves this machine.
 * A worker thread has a copy of the environment that native code does not see, so the main thread says it, before any session is made.
 */
process.env['ORT_DISABLE_TELEMETRY'] = '1';
