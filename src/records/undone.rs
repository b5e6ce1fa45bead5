//! A site without one of the changes that were made to it: what was changed since stays as it is now.

use super::json::Value;
use super::place::Place;
use super::shapes::site;
use crate::site::household::Site;

/// What tells the items of a site's lists apart that have no identity.
const NAMING: [&str; 8] = ["of", "detail", "task", "part", "feed", "use", "habit", "name"];

/// What stands now, without the change that led from `before` to `after`: what that took out is put back with every mention
/// of it, what it added is taken out with every mention, and a value that was changed since stays. Nothing where the result
/// would be no site.
pub fn without(now: &Site, before: &Site, after: &Site) -> Option<Site> {
    if now == after {
        return Some(before.clone());
    }
    let mut rest = now.clone();
    for part in after.system.parts() {
        if before.system.part(part.id()).is_none() {
            rest.system.remove(part.id());
        }
    }
    let [rest, before, after] = [&rest, before, after].map(site::write);
    let value = value_without(Some(&rest), Some(&before), Some(&after))?;
    site::read(&Place::top(&value)).ok()
}

fn value_without(now: Option<&Value>, before: Option<&Value>, after: Option<&Value>) -> Option<Value> {
    if before == after {
        return now.cloned();
    }
    if now == after {
        return before.cloned();
    }
    let merged = match (now, before, after) {
        (Some(Value::Object(now)), Some(Value::Object(before)), Some(Value::Object(after))) => {
            object_without(now, before, after)
        }
        (Some(Value::List(now)), Some(Value::List(before)), Some(Value::List(after))) => {
            list_without(now, before, after)
        }
        _ => None,
    };
    merged.or_else(|| now.cloned())
}

type Named = [(String, Value)];

/// Value by value, where all three have the same: else it is another choice, and holds something else.
fn object_without(now: &Named, before: &Named, after: &Named) -> Option<Value> {
    let mut values = Vec::new();
    for ((name, mine), ((old_name, old), (new_name, new))) in now.iter().zip(before.iter().zip(after)) {
        if name != old_name || name != new_name {
            return None;
        }
        values.push((name.clone(), value_without(Some(mine), Some(old), Some(new))?));
    }
    let all = [now, before, after].iter().all(|values| values.len() == now.len());
    all.then_some(Value::Object(values))
}

/// Item by item, where they can be told apart. Each that is put back comes behind the one that it stood behind.
fn list_without<'a>(now: &'a [Value], before: &'a [Value], after: &'a [Value]) -> Option<Value> {
    let told_apart = |list: &[Value]| (0..list.len()).all(|at| place(list, &list[at]) == Some(at));
    if ![now, before, after].into_iter().all(told_apart) {
        return None;
    }
    let find = |list: &'a [Value], like| place(list, like).map(|at| &list[at]);
    let mut items = Vec::new();
    for mine in now {
        items.extend(value_without(Some(mine), find(before, mine), find(after, mine)));
    }
    let mut behind = 0;
    for old in before {
        if let Some(at) = place(&items, old) {
            behind = at + 1;
        } else if find(now, old).is_none() && find(after, old).is_none() {
            items.insert(behind, old.clone());
            behind += 1;
        }
    }
    Some(Value::List(items))
}

/// Where an item of that name stands.
fn place(list: &[Value], like: &Value) -> Option<usize> {
    let id = like.get("id");
    list.iter().position(|item| match id {
        Some(_) => item.get("id") == id,
        None => NAMING.iter().all(|name| item.get(name) == like.get(name)),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::system::PartKind;
    use crate::site::{demo, new_part};

    #[test]
    fn what_was_taken_out_comes_back_with_its_mentions_and_what_was_changed_since_stays() {
        let before = demo::site();
        for part in before.system.parts() {
            let mut after = before.clone();
            after.system.remove(part.id());
            let mut now = after.clone();
            let new = new_part::part(&now.system, PartKind::Use, "Trough".to_owned());
            now.system.put(new.clone());
            now.name = "Elsewhere".to_owned();
            let other = now.system.sections.iter().find(|section| section.id != part.id()).map(|section| section.id);
            if let Some(id) = other {
                now.system.set_name(id, "Long roof").unwrap();
            }
            let undone = without(&now, &before, &after).unwrap();
            let mut expected = before.clone();
            expected.name = "Elsewhere".to_owned();
            expected.system.put(new);
            if let Some(id) = other {
                expected.system.set_name(id, "Long roof").unwrap();
            }
            expected.system.greatest_gone = undone.system.greatest_gone;
            assert_eq!(undone, expected, "{}", part.name());
        }
    }
    #[test]
    fn what_was_added_goes_with_its_mentions() {
        let before = demo::site();
        let mut after = before.clone();
        let tank = new_part::part(&after.system, PartKind::Tank, "New".to_owned());
        after.system.put(tank.clone());
        let mut now = after.clone();
        now.system.feeds[0].tank = Some(tank.id());
        let undone = without(&now, &before, &after).unwrap();
        assert_eq!((undone.system.tanks, undone.system.feeds[0].tank), (before.system.tanks, None));
    }
}
