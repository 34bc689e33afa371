//! A save is whole or not there.

use std::io;
use std::path::Path;

use backlift::files::save::{Folder, new_file, unwritable};

fn names_in(folder: &std::path::Path) -> Vec<String> {
    let entries = std::fs::read_dir(folder).unwrap();
    let mut names: Vec<String> =
        entries.map(|it| it.unwrap().file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

#[test]
fn nothing_stands_in_the_folder_until_everything_does() {
    let place = tempfile::tempdir().unwrap();
    let out = place.path().join("fitting");
    let mut folder = Folder::open(&out).unwrap();
    folder.add("card.ron", b"new").unwrap();
    folder.add("map.svg", b"<svg/>").unwrap();
    assert!(!out.join("card.ron").exists() && !out.join("map.svg").exists());
    folder.commit().unwrap();
    assert_eq!(names_in(&out), ["card.ron", "map.svg"]);
    assert_eq!(std::fs::read(out.join("card.ron")).unwrap(), b"new");
}

#[test]
fn a_cancelled_save_leaves_the_disk_as_it_was() {
    let place = tempfile::tempdir().unwrap();
    std::fs::write(place.path().join("card.ron"), "old").unwrap();
    let mut folder = Folder::open(place.path()).unwrap();
    folder.add("card.ron", b"new").unwrap();
    drop(folder);
    assert_eq!(names_in(place.path()), ["card.ron"]);
    assert_eq!(std::fs::read(place.path().join("card.ron")).unwrap(), b"old");

    drop(Folder::open(&place.path().join("made/for/it")).unwrap());
    assert_eq!(names_in(place.path()), ["card.ron"], "folders made for it go with it");
}

#[test]
fn an_older_file_is_replaced_only_by_a_whole_one() {
    let place = tempfile::tempdir().unwrap();
    std::fs::write(place.path().join("card.ron"), "old").unwrap();
    let mut folder = Folder::open(place.path()).unwrap();
    folder.add("card.ron", b"new").unwrap();
    assert_eq!(std::fs::read(place.path().join("card.ron")).unwrap(), b"old");
    folder.commit().unwrap();
    assert_eq!(std::fs::read(place.path().join("card.ron")).unwrap(), b"new");
}

#[test]
fn places_that_cannot_be_written_are_refused_before_any_work_with_their_mend() {
    let place = tempfile::tempdir().unwrap();
    let file = place.path().join("a_file");
    std::fs::write(&file, "kept").unwrap();
    for (path, why) in [
        (file.clone(), "a file stands where a folder should be"),
        (file.join("below"), "a file stands where a folder should be"),
        ("/proc/fitting".into(), "nothing may be written there"),
    ] {
        let fault = Folder::open(&path).expect_err(why);
        assert!(fault.message.contains(why), "{}: {fault}", path.display());
        assert!(fault.message.contains(path.to_str().unwrap()), "{fault}");
        assert!(fault.help.is_some());
    }
    assert_eq!(std::fs::read(&file).unwrap(), b"kept");

    std::fs::create_dir(place.path().join("card.pdf")).unwrap();
    let mut folder = Folder::open(place.path()).unwrap();
    let fault = folder.add("card.pdf", b"%PDF").unwrap_err();
    assert!(fault.message.contains("is a folder"), "{fault}");
}

#[test]
fn a_new_file_never_takes_the_place_of_another() {
    let place = tempfile::tempdir().unwrap();
    let path = place.path().join("mine.ron");
    new_file(&path, b"one").unwrap();
    let fault = new_file(&path, b"two").unwrap_err();
    assert!(fault.message.contains("is there already"), "{fault}");
    assert_eq!(std::fs::read(&path).unwrap(), b"one");
}

#[test]
fn a_full_disk_is_said_to_be_full_and_not_named_by_its_number() {
    let fault = unwritable(Path::new("fitting"), &io::ErrorKind::StorageFull.into());
    assert_eq!(fault.message, "fitting cannot be written: there is no room left");
    assert!(fault.help.is_some_and(|it| it.contains("make room")));
}
