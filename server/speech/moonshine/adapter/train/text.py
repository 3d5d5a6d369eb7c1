"""The words that the trade adapter is trained on: said (as a voice is to say it), and written (as the recogniser is to write it).

Usage: text.py SENTENCES.txt CHATTER.txt FORMS.txt COMMANDS.txt GOLD.txt PHRASES.tsv EXAMS_DIR OUT.tsv
The first five come from fixtures/make/sentences.ts. Odd ids of PHRASES.tsv and all phrases of EXAMS_DIR are kept out.
The lines of texts/choose.txt are kept out too, and lines of small words; they are written beside OUT as `choose.tsv` (kind, said, written), with
plain sentences of DOCUMENTS (/usr/share/doc), to choose between trainings. FORTUNES names the folder of Debian's fortunes. Another SEED draws other lines.
OUT has a line `kind, said, written` for each sentence; at least a third is plain English and talk, a tenth bare tooth codes.
"""
import collections
import gzip
import json
import os
import random
import re
import sys
from pathlib import Path

HERE = Path(__file__).parent
DIGITS = "zero one two three four five six seven eight nine ten eleven".split()
SHARES = {"trade": 10000, "joint": 2000, "gold": 14000, "shaped": 2600, "contrast": 6000, "code": 3000, "plain": 14000, "talk": 900, "visit": 1200, "command": 500}
# Each word of the lexicon is said at least so often, in forms that hold it.
LEAST_OF_A_WORD = 6
# To choose between trainings, beside texts/choose.txt: lines in which a small word tells, and plain sentences of Debian's documents.
SMALL, PLAIN = 93, 110


def bare(words: str) -> str:
    return " ".join(re.sub(r"[^a-z' ]", " ", words.lower()).split())


def sentence(words: str) -> str:
    """In the recogniser's own style: a capital, a full stop, the pronoun I."""
    words = re.sub(r"\bi\b(?! v\b| m\b)", "I", words).replace("eotrh", "EOTRH")
    return words[0].upper() + words[1:] + "."


def tooth(draw: random.Random, caps: float = 0.1) -> str:
    quadrant = draw.randint(5, 8) if draw.random() < caps else draw.randint(1, 4)
    place = draw.choice([1, 2, 3, 6, 7, 8]) if quadrant > 4 else draw.randint(1, 11)
    if place > 9:
        return f"{DIGITS[quadrant]} {DIGITS[place]}" if draw.random() < 0.9 else f"{DIGITS[quadrant]} one {DIGITS[place - 10]}"
    return f"{DIGITS[quadrant]} {draw.choice(['oh', 'oh', 'zero'])} {DIGITS[place]}"


def spelled(draw: random.Random) -> str:
    """A code said digit by digit, as people do who spell it out."""
    return f"{DIGITS[draw.choice([1, 1, 2, 2, 3, 3, 4, 4, 5, 6, 7, 8])]} {draw.choice(['zero', 'zero', 'oh'])} {DIGITS[draw.randint(1, 9)]}"


def codes(draw: random.Random) -> tuple[str, str]:
    kind = draw.random()
    if kind < 0.5:
        return "joined", spelled(draw)
    if kind < 0.8:
        return "code", tooth(draw)
    if kind < 0.9:
        return "code", f"{tooth(draw)} {draw.choice(['and ', '', ''])}{tooth(draw)}"
    return "joined", " ".join(draw.choice(DIGITS[:10]) for _ in range(draw.randint(2, 5)))


NUMBER = "one two three four five six seven eight nine ten eleven twelve fifteen".split()
SHAPES = [
    "{t} {finding}", "{t} {finding} {size}", "{t} {degree} {finding}", "{finding} on {t}", "{degree} {finding} on {t} {size}",
    "there is a {degree} {finding} on {t}", "{t} has a {finding}", "{t} has got a {degree} {finding}", "{t} and {t} {finding}",
    "no {finding} on {t}", "possible {finding} {t}", "{t} query {finding}", "{t} normal", "{t} looks fine", "{t} grade {g} {graded}",
    "{graded} grade {g} on {t}", "{t} {graded} grade {g} point {g}", "gap between {t} and {t} {size} deep", "{t} {t} {gap}", "{t} {t} {gap} {size}",
    "{t} {size}", "reduced {t} by {size}", "took {size} off {t}", "{t} reduced {size} {tool}", "rasped {row} {tool}", "{row} {finding}",
    "{row} normal", "{row} all smooth", "{finding} {row} {surface} side", "{t} {surface} {finding}", "{region} normal", "{region} {soft}",
    "{soft} on the {side} {region} {size}", "no {soft} on the {region}", "no {finding} no {soft}", "check {t} again in {n} {time}",
    "leave {t} for now", "{t} to be watched", "refer {t} for x rays", "wolf tooth {side} {degree}", "cap on {t} {loose}", "{t} cap {loose}",
    "correction {t}", "sorry {t}", "no wait {t} {finding}", "that should be {t}", "make it {n} millimetres", "{t} {finding} and {t} {finding}",
]
FILL = {
    "finding": "hook|rostral hook|caudal hook|ramp|step|sharp edge|sharp points|wave|overgrowth|transverse ridge|calculus|tartar|caries|decay|slab fracture|fracture|fissure|chip|diastema|pocket|loose tooth|shear|focal overgrowth|cupping|packed feed|recession|spur".split("|"),
    "degree": "slight|mild|small|moderate|marked|severe|large|early".split("|"),
    "graded": "mobility|caries|infundibular caries|peripheral caries|periodontal disease|EOTRH|furcation exposure".split("|"),
    "gap": "diastema|valve diastema|open diastema|gap|food packed|food trapped|valve gap packed with hay".split("|"),
    "tool": "by hand|with the hand rasp|with the float|with the motorised rasp|with the burr|with water|under water".split("|"),
    "row": "upper right|upper left|lower right|lower left|upper arcades|lower arcades|both uppers|both lowers|all four arcades|the cheek teeth|the incisors|the upper sixes|the lower elevens|the two hundreds".split("|"),
    "surface": "buccal|lingual|palatal|rostral|caudal|occlusal|labial|mesial|distal".split("|"),
    "region": "cheek|tongue|palate|gums|bars|lips|jaw joint|masseter|poll|lymph nodes|mandible|sinus|corner of the mouth".split("|"),
    "soft": "ulcer|ulceration|cut|laceration|scar|swelling|lump|bruise|bleeding|soreness|abrasion".split("|"),
    "side": "left|right|upper left|upper right|lower left|lower right".split("|"),
    "time": "weeks|months|days".split("|"),
    "loose": "loose|retained|ready|not ready|off|tight".split("|"),
    "g": "zero|one|two|three|four".split("|"),
    "n": NUMBER,
}


# Lines of which one small word makes another record, each of the small words as likely as the next: what precedes them must not tell.
CONTRASTS = [
    "{open} {finding}", "{open} {finding} on {t}", "{open} {soft}", "{open} {soft} {side} {region}", "{open} {degree} {finding} {t}", "{t} {finding} {open} {finding}",
    "{t} {open} {finding}", "{open} {finding} {open} {finding}", "{nth} cheek tooth {side} {finding}", "{side} {nth} cheek tooth {finding}", "{open} {finding} on the {nth} cheek tooth {side}",
    "{t} {is} loose", "{t} {is} sharp", "there {is} {article} {finding} on {t}", "there {is} {article} {soft} on the {side} {region}", "{t} {can} be saved", "{region} {is} sore",
    "{t} {finding} {near} {size}", "{t} {near} one mil", "grade {g} {graded} {t}", "{t} grade {g} {open} {finding}", "{which} {finding} on the {side}", "{finding} {which} side only",
    "{t} {finding} {seen}", "{seen} {finding} {t}", "{which} {region} {open} {soft}", "{open} {soft} on the {which} side of the tongue", "{word}", "{word} {t}", "{t} {word}",
]
FILL |= {
    "open": "|no|no|and|and a|and no|a|and the|large|little|small|old|one|more|not a|now a|now|note|an|any|only|or|on|new|the|just a|another|still a|still no".split("|"),
    "nth": "first|second|third|fourth|fifth|sixth|last".split("|"),
    "is": "is|isn't|is not|was|wasn't".split("|"),
    "can": "can|can't|cannot|could|couldn't".split("|"),
    "article": "a|no|any|still a|now a".split("|"),
    "near": "of|off|at|about|nearly|under|over|only|not".split("|"),
    "which": "left|right|upper|lower|upper left|upper right|lower left|lower right|inner|outer|near|off".split("|"),
    "seen": "seen|not seen|not found|found|gone|now gone|felt|not felt|noted|again|again not".split("|"),
    "word": "hook|hooks|ramp|ramps|step|steps|wave|waves|points|point|ulcer|ulcers|cup|cups|chip|chips|worn|loose|lost|sharp|short|long|sore|clear|clean|cap|caps|gap|gaps|split|packed|normal|abnormal|even|uneven|erupted|unerupted|vital|mobile|immobile".split("|"),
}


def filled(draw: random.Random, shapes: list[str]) -> str:
    def fill(match: re.Match[str]) -> str:
        name = match[1]
        if name == "t":
            return tooth(draw)
        if name == "size":
            number = draw.choice([draw.choice(NUMBER), f"{draw.choice(NUMBER[:5])} to {draw.choice(NUMBER[5:9])}", f"nought point {draw.choice(NUMBER[:9])}", f"{draw.choice(NUMBER[:6])} point five"])
            return f"{draw.choice(['', '', 'about '])}{number} {draw.choice(['millimetres', 'mil', 'mils', 'millimetre', 'centimetres'])}"
        return draw.choice(FILL[name])
    return " ".join(re.sub(r"\{(\w+)\}", fill, draw.choice(shapes)).split())


VISITS = [
    "this is {name}", "this is {name} a {n} year old {sex}", "{name} {n} year old {sex}", "next horse {name}", "next horse is {name}", "now {name}",
    "{name} is rising {n}", "owner is {person}", "{person} is holding", "{person} says he is eating well", "at {person}'s yard",
    "flag that one", "note {name} was a bit nervous today", "note ask {person} about the feed", "pause there", "carry on listening", "read that back",
    "what have I missed", "scratch that one", "finished with {name}", "see {name} again in {n} months", "seen with {person}", "vet is {person}",
    "{n} mil of {drug} in the vein by the vet", "nought point {n} mil {drug} intravenously", "{drug} given by {person}", "sedated with {drug} and {drug}",
    "heart rate {n}", "top up of {drug} nought point {n}", "he weighs about five hundred and {n} kilos", "{name} was done in March",
]
PEOPLE = "Mrs Hall|Mister Webb|Sarah|Tom|Anna|Doctor Lane|the owner|the groom|Jo|Mrs Price|David|Kate|the trainer".split("|")
DRUGS = "detomidine|romifidine|butorphanol|xylazine|acepromazine|morphine|flunixin|phenylbutazone".split("|")


def visit(draw: random.Random, names: list[str]) -> str:
    fill = {"name": draw.choice(names), "person": draw.choice(PEOPLE), "n": draw.choice(NUMBER), "sex": draw.choice(["mare", "gelding", "stallion", "filly", "colt"]), "drug": draw.choice(DRUGS)}
    return draw.choice(VISITS).format(**fill)


def steered(draw: random.Random, commands: list[str]) -> str:
    before = draw.choice(["", "", "", "okay ", "right ", "um ", "now ", "and ", "so ", "well "])
    return f"{before}{draw.choice(commands)}{draw.choice(['', '', '', ' please', ' now', ' then'])}"


def covering(draw: random.Random, forms: list[str], said: list[str]) -> list[str]:
    """Forms of the lexicon for the words that were said too seldom, alone or at a tooth."""
    often = collections.Counter(word for line in said for word in line.split())
    holding: dict[str, list[str]] = {}
    for form in forms:
        for word in set(form.split()):
            holding.setdefault(word, []).append(form)
    made = []
    for word in sorted(holding):
        while often[word] < LEAST_OF_A_WORD:
            form = draw.choice(holding[word])
            made.append(draw.choice(["{f}", "{f}", "{f}", "{t} {f}", "{f} on the {s}"]).format(f=form, t=tooth(draw), s=draw.choice(FILL["side"])))
            often.update(made[-1].split())
    return made


def sentences_of(paths: list[Path], between: str = "\n\n") -> list[str]:
    """Plain sentences of 4 to 14 words, letters and commas only."""
    found = set()
    for path in paths:
        data = gzip.decompress(path.read_bytes()) if path.suffix == ".gz" else path.read_bytes()
        for saying in data.decode("utf-8", errors="ignore").split(between):
            flat = " ".join(saying.split())
            for one in re.findall(r"(?:(?<=[.!?] )|^)[A-Z][A-Za-z', ]+[.!?](?= |$)", flat):
                if 4 <= len(one.split()) <= 14 and not re.search(r"\b[A-Z]{2,}\b", one):
                    found.add(one)
    return sorted(found)


def fortunes(folder: Path = Path(os.environ.get("FORTUNES", "/usr/share/games/fortunes"))) -> list[str]:
    """From Debian's `fortunes` and `fortunes-min`."""
    found = sentences_of([path for path in sorted(folder.glob("*")) if path.is_file() and path.suffix not in (".dat", ".u8")], "\n%\n")
    if not found:  # or the ear would forget plain English, and nobody would know why
        raise SystemExit(f"No plain English in {folder}: install Debian's fortunes and fortunes-min, or name their folder by FORTUNES.")
    return found


def main(sentences: str, chatter: str, forms: str, commands: str, gold: str, phrases: str, exams: str, out: str) -> None:
    draw = random.Random(int(os.environ.get("SEED", "20260304")))
    rows = [line.split("\t") for line in Path(phrases).read_text().splitlines() if line]
    kept_out = {bare(words) for name, words in rows if int(name[1:]) % 2 == 1}
    kept_out |= {bare(one["say"]) for path in Path(exams).glob("*.json") for one in json.loads(path.read_text())["phrases"]}
    names = (HERE / "texts/names.txt").read_text().splitlines()
    handled = (HERE / "texts/chatter.txt").read_text().splitlines()
    talk = handled + Path(chatter).read_text().splitlines()
    plain = fortunes()
    draw.shuffle(plain)
    trade = Path(sentences).read_text().splitlines()
    by_hand = sorted(set(map(bare, Path(gold).read_text().splitlines())))
    draw.shuffle(by_hand)
    chosen_by = (HERE / "texts/choose.txt").read_text().splitlines()
    kept_out |= set(map(bare, chosen_by))
    # Drawn apart from the rest, so that they are the same whatever is trained on.
    small, apart = [], random.Random(93)
    while len(small) < SMALL:
        said = filled(apart, CONTRASTS)
        if len(said.split()) > 3 and said not in kept_out:
            small.append(said)
            kept_out.add(said)
    read = sentences_of(sorted(Path(os.environ.get("DOCUMENTS", "/usr/share/doc")).glob("*/README*")))
    choosing = [("line", said) for said in chosen_by] + [("small", said) for said in small] + [("plain", said) for said in apart.sample(read, min(PLAIN, len(read)))]
    Path(out).with_name("choose.tsv").write_text("".join(f"{kind}\t{said}\t{said if kind == 'plain' else sentence(said)}\n" for kind, said in choosing))
    steering = Path(commands).read_text().splitlines()
    makers = {
        "trade": iter(trade).__next__, "joint": lambda: " ".join(draw.sample(trade, 2)), "command": lambda: steered(draw, steering), "shaped": lambda: filled(draw, SHAPES), "contrast": lambda: filled(draw, CONTRASTS), "plain": iter(plain).__next__, "gold": iter(by_hand).__next__,
        "talk": iter(draw.sample(talk, len(talk))).__next__, "visit": lambda: visit(draw, names),
    }
    lines, seen = [], set(kept_out)
    for name, share in SHARES.items():
        if name == "code":  # a code may come again: other voices and gaps say it
            lines += [(kind, said, sentence(said)) for kind, said in (codes(draw) for _ in range(share))]
            continue
        made, tries = 0, 0
        while made < share and tries < share * 20:
            tries += 1
            try:
                said = makers[name]()
            except StopIteration:
                break
            if said and bare(said) not in seen:
                seen.add(bare(said))
                lines.append((name, said, said if name == "plain" else sentence(said)))
                made += 1
    own = [said for _, said, _ in lines]
    lines += [("form", said, sentence(said)) for said in covering(draw, Path(forms).read_text().splitlines(), own) if bare(said) not in kept_out]
    # The horse is spoken to all day: talk is said more than once, by other voices.
    lines += [("talk", said, sentence(said)) for said in (f"{draw.choice(['', 'okay ', 'um ', 'right '])}{draw.choice(handled)}" for _ in range(700)) if bare(said) not in kept_out]
    lines += [("even", words, sentence(words)) for name, words in rows if int(name[1:]) % 2 == 0]
    draw.shuffle(lines)
    voiced = [(kind, re.sub(r"eotrh", "E O T R H", said, flags=re.I), written) for kind, said, written in lines]
    Path(out).write_text("".join("\t".join(line) + "\n" for line in voiced))
    counts = {kind: sum(line[0] == kind for line in lines) for kind in sorted({line[0] for line in lines})}
    print(len(lines), counts)


if __name__ == "__main__":
    main(*sys.argv[1:])
