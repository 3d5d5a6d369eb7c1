#!/usr/bin/env bash
# Teaches the ear again, from the lexicon and the grammar as they are today, and writes adapter.bin beside what it measured.
#
#   retrain.sh WORK_FOLDER SPEECH_FOLDER WEIGHTS_FOLDER
#
# WORK_FOLDER is made and keeps every step (a step whose result is there is not done again; the steps may run on different machines, if the folder
# is carried). SPEECH_FOLDER holds `phrases`, `digits`, `noise` and `rooms`; WEIGHTS_FOLDER the pinned `encoder_model.onnx` and
# `decoder_model_merged.onnx` (the cache of `npm start`). From Debian: flite, espeak-ng, fortunes. Settings by environment: PYTHON (python3 with
# numpy, torch, transformers, onnx, soundfile), VOICE_PYTHON (the one of fixtures/make/README.md; with GPUS it needs torch and onnx too), LINES
# (60000 draws of the sampler), VOICES (the folder of voices of fixtures/make/README.md), NATURAL (40000 clips in natural voices), STEPS (6000),
# SECONDS_AT_MOST (no end), SHARE (0.85 of what was learned is added), WORKERS (all processors), GPUS (0; how many there are), SEED (another draws
# other lines, speakers and noise), FROM (an adapter to go on from, more gently; half of what comes out is it), FORTUNES
# (/usr/share/games/fortunes), DOCUMENTS (/usr/share/doc). The text needs node, the rest does not: without npx the table that chooses between
# trainings is left to be made elsewhere.
# Two data-centre GPUs render the natural voices in ten minutes and train in eight; a processor alone takes days.
set -euo pipefail
[ $# -eq 3 ] || { sed -n '2,15p' "$0" >&2; exit 2; }
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../../../../.." && pwd)
mkdir -p "$1"
work=$(cd "$1" && pwd) speech=$(cd "$2" && pwd) weights=$(cd "$3" && pwd)
[ -z "${FROM:-}" ] || { FROM=$(realpath "$FROM"); export FROM; }
python=${PYTHON:-python3} workers=${WORKERS:-$(nproc)}
export GPUS=${GPUS:-0}

cd "$root"
if [ ! -e "$work/tokens.json" ]; then
  npx tsx fixtures/make/sentences.ts "$work/sentences.txt" "$work/chatter.txt" "$work/forms.txt" "$work/commands.txt" "$work/gold.txt" "${LINES:-60000}"
  "$python" "$here/text.py" "$work/sentences.txt" "$work/chatter.txt" "$work/forms.txt" "$work/commands.txt" "$work/gold.txt" "$speech/phrases/phrases.tsv" fixtures/exams "$work/lines.tsv"
  npx tsx "$here/tokens.ts" "$work/tokens.json" "$work/lines.tsv" "$work/choose.tsv"
fi
cd "$here"
[ -e "$work/recorded/noise-report" ] || "$python" recorded.py "$speech" "$work/recorded"
[ -e "$work/robots/clips.tsv" ] || "$python" robots.py "$work/lines.tsv" "$work/robots" 2 "$workers"
[ -e "$work/choosing/plain-native/clips.tsv" ] || "${VOICE_PYTHON:-$python}" choosing.py "$work/choose.tsv" "$work/choosing"
[ -e "$work/choosing/even-alpha" ] || cp -r "$work/recorded/even-alpha" "$work/choosing/"
[ -e "$work/natural" ] || "${VOICE_PYTHON:-$python}" natural.py "$work/lines.tsv" "$work/natural" "${NATURAL:-40000}" "$workers"
# Two trainings that differ in how much they see of which voices, side by side where there are two GPUs, and one adapter out of both.
steps=${STEPS:-6000} seconds=${SECONDS_AT_MOST:-inf} clips=("$work/robots" "$work/recorded/even:8") taught=("$work/adapter0.bin" "$work/adapter1.bin")
if [ -n "${FROM:-}" ]; then peaks=(3e-4 4e-4) blended=("$FROM" "$FROM" "${taught[@]}"); else peaks=(5e-4 7e-4) blended=("${taught[@]}"); fi
teach() { CUDA_VISIBLE_DEVICES=$(($1 % (GPUS > 0 ? GPUS : 1))) BATCH=$2 PEAK=${peaks[$1]} "$python" train.py "$weights" "$work/tokens.json" "$work/recorded/noise-tune" "$work/adapter$1.bin" "$steps" "$seconds" "${clips[@]}" "$work/natural:$3"; }
if [ "$GPUS" -gt 1 ]; then teach 0 64 2 & first=$!; teach 1 128 3; wait "$first"; else teach 0 64 2; teach 1 128 3; fi
"$python" blend.py "$work/adapter.bin" "${SHARE:-0.85}" "${blended[@]}"
"$python" judge.py "$weights" "$work/tokens.json" "$work/recorded/noise-tune" "$work/adapter.bin" "$work/recorded/even-alpha" "$work/recorded/codes-tune"
"$python" judge.py "$weights" "$work/tokens.json" "$work/recorded/noise-report" "$work/adapter.bin" "$work/recorded/"{odd-kumo,odd-gongitsune,odd-alpha,codes-report} | tee "$work/report.txt"
cd "$root"
choose=(npx tsx tests/bench/choose.ts --jobs "$workers" --weights "$weights" "$work/choosing" "$work/recorded/noise-tune" "${here%/train}/adapter.bin" "$work"/adapter*.bin)
if command -v npx > /dev/null; then "${choose[@]}" | tee "$work/choose.txt"; else echo "To choose, where node is: ${choose[*]}"; fi
echo "Better by choose.txt? Then copy $work/adapter.bin to ${here%/train}/adapter.bin, and report.txt's figures to CARD.md."
