//! Jaw records in the browser's database: one store, each record as JSON text under its id.

use holdround_core::record::{Record, to_text};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{EventTarget, IdbDatabase, IdbObjectStore, IdbOpenDbRequest, IdbRequest, IdbTransactionMode};

use super::{Page, with_page};
use crate::document;

const NAME: &str = "holdround";
const STORE: &str = "jaw-records";

/// What is to be kept: records, each with its id.
pub(super) type Changes = Vec<(String, Record)>;

/// Does `act` when `name` happens.
pub(super) fn when(target: &EventTarget, name: &str, act: Box<dyn FnOnce()>) -> Result<(), JsValue> {
    target.add_event_listener_with_callback(name, Closure::once_into_js(act).unchecked_ref())
}

/// Opens the store, and hands what is in it to the page.
pub(super) fn open() {
    if begin_to_open().is_err() {
        with_page(Page::shelf_refused);
    }
}

fn begin_to_open() -> Result<(), JsValue> {
    let factory = web_sys::window().ok_or(JsValue::NULL)?.indexed_db()?.ok_or(JsValue::NULL)?;
    let request: IdbOpenDbRequest = factory.open_with_u32(NAME, 1)?;
    let new = request.clone();
    when(
        &request,
        "upgradeneeded",
        Box::new(move || {
            let _made = database(&new).map(|database| database.create_object_store(STORE));
        }),
    )?;
    let failed = request.clone();
    let tell = move || {
        let newer = failed.error().ok().flatten().is_some_and(|error| error.name() == "VersionError");
        with_page(|page| if newer { page.shelf_taken() } else { page.shelf_refused() });
    };
    when(&request, "error", Box::new(tell))?;
    let opened = request.clone();
    let read = move || {
        if database(&opened).is_none_or(|database| read_all(database).is_err()) {
            with_page(Page::shelf_refused);
        }
    };
    when(&request, "success", Box::new(read))
}

fn refused() -> Box<dyn FnOnce()> {
    Box::new(|| with_page(Page::shelf_refused))
}

fn database(request: &IdbRequest) -> Option<IdbDatabase> {
    request.result().ok().map(JsCast::unchecked_into)
}

fn read_all(database: IdbDatabase) -> Result<(), JsValue> {
    // A newer page in another window waits for this one to let go.
    let taken = database.clone();
    let let_go = move || {
        taken.close();
        with_page(Page::shelf_taken);
    };
    when(&database, "versionchange", Box::new(let_go))?;
    let all = database.transaction_with_str(STORE)?.object_store(STORE)?.get_all()?;
    when(&all, "error", refused())?;
    let found = all.clone();
    let hand_over = move || {
        let texts = found.result().map(|list| js_sys::Array::from(&list)).unwrap_or_default();
        let texts = texts.iter().filter_map(|text| text.as_string()).collect();
        with_page(|page| page.shelf_opened(database, texts));
    };
    when(&all, "success", Box::new(hand_over))
}

/// Keeps `changes` in one transaction, wholly or not at all. What another window has kept in the meantime is merged
/// in, not written over. The page is told how it went.
pub(super) fn keep(database: &IdbDatabase, changes: Changes) -> Result<(), JsValue> {
    let transaction = database.transaction_with_str_and_mode(STORE, IdbTransactionMode::Readwrite)?;
    when(&transaction, "complete", Box::new(|| with_page(Page::shelf_kept)))?;
    when(&transaction, "abort", refused())?;
    let store = transaction.object_store(STORE)?;
    for (id, record) in changes {
        keep_one(&store, id, record)?;
    }
    Ok(())
}

fn keep_one(store: &IdbObjectStore, id: String, mut record: Record) -> Result<(), JsValue> {
    let there = store.get(&id.as_str().into())?;
    let (store, found) = (store.clone(), there.clone());
    let put = move || {
        // By now another change of this page's own may be there.
        let mut known = String::new();
        with_page(|page| known = page.shelf.stored(&id));
        let text = found.result().ok().and_then(|text| text.as_string()).filter(|text| *text != known);
        let handed = record.clone();
        let theirs = text.as_deref().and_then(read);
        if text.is_some() && theirs.is_none() {
            // A newer page wrote it: it stays, and what is here is told and offered as text.
            let _given_up = store.transaction().abort();
            return with_page(Page::shelf_taken);
        }
        let fates = theirs.map(|(_, theirs)| record.merge(theirs)).unwrap_or_default();
        let text = to_text(&record.to_document(&id));
        // If this fails the transaction is given up, and the page is told.
        let _asked = store.put_with_key(&text.as_str().into(), &id.as_str().into());
        with_page(|page| {
            page.shelf.known(id, &handed, record, text);
            page.tell_fates(&fates);
        });
    };
    when(&there, "success", Box::new(put))
}

/// The record in a text of the store, and its id.
pub(super) fn read(text: &str) -> Option<(String, Record)> {
    Record::from_document(&document::read(text)?).ok()
}
