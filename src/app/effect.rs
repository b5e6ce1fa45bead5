//! What is to be done outside the model.

use std::sync::Arc;

use crate::app::model::Place;
use crate::engine::sizing::study::Inquiry;
use crate::records::cupboard::{Index, SiteFile, SiteId};
use crate::site::diary::{Diary, Half, Line};
use crate::site::household::Site;
use crate::site::rain::Rain;
use crate::site::trial::Trial;

/// One thing to do; its result comes back as an event.
#[derive(Clone, Debug, PartialEq)]
pub enum Effect {
    /// Keep the index.
    SaveIndex(Index),
    /// Keep a site.
    SaveSite(SiteId, Arc<Site>),
    /// Keep the rain of a site, or that it has none.
    SaveRain(SiteId, Option<Arc<Rain>>),
    /// Keep the trial beside a site.
    SaveTrial(SiteId, Trial),
    /// Keep the whole diary of a site that came anew.
    SaveDiary(SiteId, Arc<Diary>),
    /// Keep a line of a diary, which stood in another half-year before if one is named.
    SaveLine(SiteId, Line, Option<Half>),
    /// Take a site away.
    RemoveSite(SiteId),
    /// Take sites in, all or none.
    TakeIn {
        /// The sites.
        sites: Vec<(SiteId, SiteFile)>,
        /// The index after.
        index: Index,
        /// Whether those that were there go.
        replace: bool,
    },
    /// Say how much is kept.
    MeasureStorage,
    /// Ask the browser not to throw away what is kept.
    AskToPersist,
    /// Hand a file to the person.
    Download {
        /// Its name.
        name: String,
        /// Its media type.
        media_type: &'static str,
        /// Its text.
        text: String,
    },
    /// Hand a picture to the person as PNG.
    DownloadBitmap {
        /// Its name.
        name: String,
        /// The picture as SVG.
        svg: String,
        /// Its width and height, in whole pixels.
        size: (u32, u32),
    },
    /// Take up a question about size, in the place of the same one before.
    Study(crate::app::study::Order),
    /// Leave it.
    LeaveStudy(Inquiry),
    /// Go on with the work in hand once the page is free.
    GoOn,
    /// Let the waiting version take over.
    SwitchVersion,
    /// Name the place in the page's address.
    ShowPlace(Place),
}

impl Effect {
    /// Whether something is kept otherwise than it was.
    pub fn keeps(&self) -> bool {
        self.site().is_some() || matches!(self, Effect::SaveIndex(_) | Effect::TakeIn { .. })
    }

    /// The site of which something is kept, where it is one.
    fn site(&self) -> Option<SiteId> {
        match self {
            Effect::SaveSite(id, _)
            | Effect::SaveRain(id, _)
            | Effect::SaveTrial(id, _)
            | Effect::SaveDiary(id, _)
            | Effect::SaveLine(id, ..)
            | Effect::RemoveSite(id) => Some(*id),
            _ => None,
        }
    }

    /// The site of whose diary something is kept.
    pub(super) fn diary(&self) -> Option<SiteId> {
        let of_diary = matches!(self, Effect::SaveDiary(..) | Effect::SaveLine(..));
        self.site().filter(|_| of_diary)
    }

    /// Whether nothing of an effect before this one is left to be kept once this one is.
    pub(super) fn makes_needless(&self, before: &Effect) -> bool {
        match self {
            Effect::TakeIn { replace: true, .. } => true,
            Effect::TakeIn { sites, .. } => {
                matches!(before, Effect::SaveIndex(_)) || sites.iter().any(|(id, _)| before.site() == Some(*id))
            }
            Effect::RemoveSite(id) => before.site() == Some(*id),
            Effect::SaveDiary(id, _) => before.diary() == Some(*id),
            // What happened to one entry stands on what happened to it before.
            Effect::SaveLine(..) => false,
            _ => std::mem::discriminant(self) == std::mem::discriminant(before) && self.site() == before.site(),
        }
    }
}
