//! Whatever bytes come in, the readers of cards, records and drafts answer without a panic, and a
//! card that is read can be written, read again, turned into a draft and put into a job.
//!
//! DEVELOPERS.md says how it is run.
#![no_main]

use flapwright_model::card_draft::CardDraft;
use flapwright_model::card_record::CardRecord;
use flapwright_model::file::{read_card, read_job, write_card, write_job};
use flapwright_model::job::Job;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let text = String::from_utf8_lossy(bytes);
    if let Ok(card) = read_card(&text) {
        assert_eq!(read_card(&write_card(&card)).as_ref(), Ok(&card));
        assert_eq!(CardDraft::of_card(&card).resolve().as_ref(), Ok(&card));
        let job = Job::empty(Vec::new(), vec![card]);
        assert_eq!(read_job(&write_job(&job)), Ok(job));
    }
    drop(CardRecord::read(&text));
    if let Ok(draft) = CardDraft::read(&text) {
        drop(draft.resolve());
    }
});
