// A resident reader over pipes: weights stay loaded, there is no port that anybody else could talk to,
// and it ends when its standard input does, so it cannot outlive us.
//
//   reader WEIGHTS THREADS
//   in (0):  u32 bytes of prompt, u32 samples, prompt (UTF-8), samples (float32, mono, 16 kHz); little-endian
//   in (3):  'h' hold still, 'g' go on; its end is the end of us
//   out (1): one JSON line when ready, then one JSON line a request, and each second a line with its processor time so far, in ms
#include "whisper.h"
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <signal.h>
#include <string>
#include <thread>
#include <unistd.h>
#include <vector>

static const uint32_t MAX_PROMPT = 1u << 14;
static const uint32_t MAX_SAMPLES = 16000u * 30u;

static bool readAll(void * to, size_t bytes) { return fread(to, 1, bytes, stdin) == bytes; }

static std::string quoted(const std::string & text) {
    std::string out = "\"";
    for (unsigned char c : text) {
        if (c == '"' || c == '\\') { out += '\\'; out += c; }
        else if (c < 0x20) { char hex[8]; snprintf(hex, sizeof hex, "\\u%04x", c); out += hex; }
        else out += c;
    }
    return out + "\"";
}

// One call a line: two threads write here.
static void say(const std::string & text) { const std::string line = text + "\n"; fwrite(line.data(), 1, line.size(), stdout); fflush(stdout); }

// Its own messages would name files and print what it heard: neither belongs in a log.
static void silent(ggml_log_level, const char *, void *) {}

// Whoever watches judges by what this says and not by a clock: on a starved machine the time grows slowly, in a process that hangs
// not at all, and a stopped one says nothing.
static void pulse() {
    for (;;) {
        std::this_thread::sleep_for(std::chrono::seconds(1));
        say("{\"worked\":" + std::to_string((long long) (1000.0 * std::clock() / CLOCKS_PER_SEC)) + "}");
    }
}

// A process of its own that obeys channel 3: it can stop and wake the reader in the middle of a step, and ends it, stopped or not,
// when whoever started us is gone.
static void watch() {
    const pid_t reader = getpid();
    if (fork() != 0) { close(3); return; }
    for (int pipe = 0; pipe < 3; pipe++) close(pipe);
    char order;
    while (::read(3, &order, 1) == 1 && getppid() == reader) kill(reader, order == 'h' ? SIGSTOP : SIGCONT);
    if (getppid() == reader) kill(reader, SIGKILL);
    _exit(0);
}

// Sound is looked at with six seconds of silence behind it in place of the thirty that the model was made with: half the
// work. Words misheard in 25 even phrases at 10 dB: 0.253 with thirty, 0.247 with six, 0.29 with two and a half.
static const int FRAMES = 1500, SILENT_FRAMES = 300, SAMPLES_A_FRAME = 320;

static std::string read(whisper_context * ctx, int threads, const std::string & prompt, const std::vector<float> & sound) {
    whisper_full_params p = whisper_full_default_params(WHISPER_SAMPLING_BEAM_SEARCH);
    p.beam_search.beam_size = 5;
    p.n_threads = threads;
    p.language = "en";
    p.no_context = true;
    p.single_segment = true;
    p.no_timestamps = true;      // its times were those of the clip's end; and a time said early ended the reading there
    p.audio_ctx = std::min(FRAMES, (int) sound.size() / SAMPLES_A_FRAME + SILENT_FRAMES);
    p.suppress_non_speech_tokens = true;
    p.temperature_inc = 0.0f;    // no second tries at a higher temperature: the same sound gives the same words
    p.print_progress = false;
    p.print_realtime = false;
    p.print_timestamps = false;
    p.initial_prompt = prompt.c_str();
    if (whisper_full(ctx, p, sound.data(), (int) sound.size()) != 0) return "{\"error\":\"the sound could not be read\"}";
    std::string tokens;
    const whisper_token end = whisper_token_eot(ctx);
    for (int s = 0; s < whisper_full_n_segments(ctx); s++) {
        for (int t = 0; t < whisper_full_n_tokens(ctx, s); t++) {
            const whisper_token_data d = whisper_full_get_token_data(ctx, s, t);
            if (d.id >= end) continue;
            char number[48];
            snprintf(number, sizeof number, ",\"logProb\":%.4f}", std::log(d.p > 1e-9f ? d.p : 1e-9f));
            tokens += (tokens.empty() ? "" : ",") + std::string("{\"text\":") + quoted(whisper_full_get_token_text(ctx, s, t)) + number;
        }
    }
    return "{\"tokens\":[" + tokens + "]}";
}

int main(int argc, char ** argv) {
    if (argc != 3) { say("{\"error\":\"usage: reader WEIGHTS THREADS\"}"); return 2; }
    whisper_log_set(silent, nullptr);
    watch();
    std::thread(pulse).detach();
    whisper_context * ctx = whisper_init_from_file_with_params(argv[1], whisper_context_default_params());
    if (ctx == nullptr) { say("{\"error\":\"the weights could not be loaded\"}"); return 3; }
    const int threads = atoi(argv[2]);
    say("{\"ready\":" + quoted(whisper_model_type_readable(ctx)) + "}");
    uint32_t head[2];
    while (readAll(head, sizeof head)) {
        if (head[0] > MAX_PROMPT || head[1] > MAX_SAMPLES) { say("{\"error\":\"request out of bounds\"}"); return 4; }
        std::string prompt(head[0], '\0');
        std::vector<float> sound(head[1]);
        if (!readAll(&prompt[0], prompt.size()) || !readAll(sound.data(), sound.size() * sizeof(float))) break;
        say(read(ctx, threads, prompt, sound));
    }
    // Nothing is left to do, and a thread still counts: no tidying.
    _exit(0);
}
