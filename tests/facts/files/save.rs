//! A save is whole or not there.

use std::io;
use std::path::Path;

use backlift::files::document::{Kind, text_of_file};
use backlift::files::save::{Folder, check_new_file, new_file, new_files, over, unwritable};
use backlift::files::scenario::over_unchanged;

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
fn a_scenario_changed_meanwhile_is_left_as_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("mine.ron");
    std::fs::write(&path, "changed").unwrap();
    over_unchanged(&path, "as it was", "found").unwrap_err();
    assert_eq!(std::fs::read_to_string(&path).unwrap(), "changed");
    over_unchanged(&path, "changed", "found").unwrap();
    assert_eq!(std::fs::read_to_string(&path).unwrap(), "found");
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

#[cfg(unix)]
#[test]
fn what_is_written_over_keeps_its_links_and_its_permissions() {
    use std::os::unix::fs::{PermissionsExt, symlink};
    let place = tempfile::tempdir().unwrap();
    let [real, link] = ["kept/real.ron", "mine.ron"].map(|it| place.path().join(it));
    std::fs::create_dir(place.path().join("kept")).unwrap();
    std::fs::write(&real, "old").unwrap();
    std::fs::set_permissions(&real, PermissionsExt::from_mode(0o640)).unwrap();
    symlink("kept/real.ron", &link).unwrap();
    let mode = || std::fs::metadata(&real).unwrap().permissions().mode() & 0o7777;
    over(&link, b"new").unwrap();
    assert!(link.symlink_metadata().unwrap().is_symlink());
    assert_eq!(std::fs::read(&real).unwrap(), b"new");
    assert_eq!(mode(), 0o640);

    let mut folder = Folder::open(&place.path().join("kept")).unwrap();
    folder.add("real.ron", b"newer").unwrap();
    folder.commit().unwrap();
    assert_eq!(mode(), 0o640);
}

#[test]
fn when_one_file_of_a_folder_cannot_be_placed_none_is() {
    let place = tempfile::tempdir().unwrap();
    let file = |name: &str| place.path().join(name);
    std::fs::write(file("card.pdf"), "old").unwrap();
    let mut folder = Folder::open(place.path()).unwrap();
    for name in ["card.pdf", "card.ron", "map.svg"] {
        folder.add(name, b"new").unwrap();
    }
    // In the way only now.
    std::fs::create_dir(file("map.svg")).unwrap();
    let fault = folder.commit().unwrap_err();
    assert!(fault.message.contains("map.svg"), "{fault}");
    assert_eq!(names_in(place.path()), ["card.pdf", "map.svg"]);
    assert_eq!(std::fs::read(file("card.pdf")).unwrap(), b"old");
}

/// A folder as a run leaves it that was stopped between two files.
fn stopped_half_way() -> tempfile::TempDir {
    let place = tempfile::tempdir().unwrap();
    let file = |name: &str| place.path().join(name);
    for folder in ["new", "old"] {
        std::fs::create_dir_all(file(".backlift").join(folder)).unwrap();
    }
    std::fs::write(file("card.pdf"), "new").unwrap();
    std::fs::write(file(".backlift/old/card.pdf"), "old").unwrap();
    std::fs::write(file("card.ron"), "old").unwrap();
    std::fs::write(file(".backlift/new/card.ron"), "new").unwrap();
    std::fs::write(file(".backlift/list"), "card.pdf\ncard.ron").unwrap();
    place
}

#[test]
fn what_a_stopped_run_began_is_brought_to_its_end_by_the_next() {
    let place = stopped_half_way();
    drop(Folder::open(place.path()).unwrap());
    assert_eq!(names_in(place.path()), ["card.pdf", "card.ron"]);
    for name in ["card.pdf", "card.ron"] {
        assert_eq!(std::fs::read(place.path().join(name)).unwrap(), b"new");
    }
}

#[test]
fn what_a_stopped_run_began_is_brought_to_its_end_before_any_of_it_is_read() {
    const CARD: Kind = Kind { what: "a card", noun: "card", named: "it", like: "", none: "" };
    let place = stopped_half_way();
    let read = text_of_file(&place.path().join("card.ron"), &CARD).unwrap();
    assert_eq!(read.text(), "new");
    assert_eq!(names_in(place.path()), ["card.pdf", "card.ron"]);
}

#[test]
fn what_a_stopped_run_began_and_cannot_be_ended_is_taken_back() {
    let place = stopped_half_way();
    std::fs::remove_file(place.path().join("card.ron")).unwrap();
    std::fs::create_dir(place.path().join("card.ron")).unwrap();
    drop(Folder::open(place.path()).unwrap());
    assert_eq!(names_in(place.path()), ["card.pdf", "card.ron"]);
    assert_eq!(std::fs::read(place.path().join("card.pdf")).unwrap(), b"old");
}

#[test]
fn a_list_leads_out_of_no_folder() {
    let place = stopped_half_way();
    let inner = place.path().join("inner");
    std::fs::create_dir(&inner).unwrap();
    std::fs::rename(place.path().join(".backlift"), inner.join(".backlift")).unwrap();
    std::fs::write(inner.join(".backlift/list"), "../card.ron\ncard.ron").unwrap();
    drop(Folder::open(&inner).unwrap());
    assert_eq!(std::fs::read(place.path().join("card.ron")).unwrap(), b"old");
    assert_eq!(names_in(&inner), ["card.ron"]);
}

#[test]
fn litter_of_a_stopped_run_goes_with_the_next_save() {
    let place = tempfile::tempdir().unwrap();
    std::fs::create_dir_all(place.path().join(".backlift/new")).unwrap();
    std::fs::write(place.path().join(".backlift/new/card.pdf"), "half").unwrap();
    new_file(&place.path().join("mine.ron"), b"one").unwrap();
    assert_eq!(names_in(place.path()), ["mine.ron"]);
}

#[test]
fn of_several_new_files_none_is_written_when_one_is_refused() {
    let place = tempfile::tempdir().unwrap();
    let [csv, ron] = ["log.csv", "log.ron"].map(|it| place.path().join(it));
    std::fs::write(&ron, "mine").unwrap();
    new_files(&[(csv.as_path(), b"a,b"), (ron.as_path(), b"()")]).unwrap_err();
    assert_eq!(names_in(place.path()), ["log.ron"]);
    assert_eq!(std::fs::read(&ron).unwrap(), b"mine");
}

#[test]
fn of_many_that_write_one_new_file_at_once_only_one_says_yes() {
    let place = tempfile::tempdir().unwrap();
    for round in 0..50 {
        let path = place.path().join(format!("{round}.ron"));
        let yes: usize = std::thread::scope(|scope| {
            let all: Vec<_> = (0..4)
                .map(|n| {
                    let path = path.clone();
                    scope.spawn(move || new_file(&path, format!("{n}").as_bytes()).is_ok())
                })
                .collect();
            all.into_iter().map(|it| usize::from(it.join().unwrap())).sum()
        });
        assert_eq!(yes, 1, "round {round}");
    }
}

#[test]
fn a_new_file_that_cannot_be_written_is_refused_before_there_is_anything_to_write() {
    let place = tempfile::tempdir().unwrap();
    let file = place.path().join("mine.ron");
    check_new_file(&file).unwrap();
    assert!(names_in(place.path()).is_empty());
    let fault = check_new_file(&place.path().join("no/mine.ron")).unwrap_err();
    assert!(fault.message.contains("its folder is not there"), "{fault}");
    std::fs::write(&file, "mine").unwrap();
    assert!(check_new_file(&file).unwrap_err().message.contains("is there already"));
}
