"""Clips and cues."""

FROM = "{name} sent a clip{about}."
CUE = "Give one cue"
ASK_FOR_FILM = "Ask for a film"
NOTHING_TO_FILM = "{name} has no plan now, so there is no movement to film."
FILM_OF_WHICH = "A film of which movement of {name}'s?"
FILM_ASKED = (
    "Asked. {client} reads it now, after a session under way or the night, and again before the bands go on for the {name}. "
    "The film comes here, with a button for your one cue."
)
FILM_PLEASE = (
    "{coach} would like to see your {name}. In your next session, in the warm-up set and before the bands go on, let "
    "somebody film a few reps from the side, or lean the phone on something, and send the film here."
)
FILM_NOW = "Your coach asked for a film of this one: a few reps without bands, from the side. Send it here first, then the bands."
BANDS_FIRST = "Bands first. When they are off, send the film again and it goes to your coach."
PASSED_ON = "Your clip is with {coach}. Their cue comes here, and again before the next set 1."
NO_ROUND_ONES = "Round videos and moving pictures I can't pass on. Film it with your camera and send it as a video, please."
WHICH = "Which movement is this? Send it again with its name under it: {names}."
KEPT = "Kept. Your clients see it before the {name}."
ASK = "One cue for {name}, {movement}. Short; it stands before their next set 1."
TOO_LONG = "One line, please, up to {most} letters."
GIVEN = "Noted; {name} reads it now and before the next set 1."
LATER = "Noted; {name} reads it after the session or the night, and before the next set 1."
CUE_FOR_YOU = "{coach} on your {name}: {cue}"
