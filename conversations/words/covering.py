"""One coach stands in for another, or takes a client over."""

HAND_OVER = "Hand over"
TO_WHOM = "Who looks after {name} from now on?"
NO_OTHER_COACH = "There is no other coach here yet. Whoever runs this can add one."
OPEN_CARD = "Open the card"
GIVEN_TO_YOU = "{coach} hands {name} over to you. Their alerts reach you from now on."
NEW_COACH = (
    "From now on {coach} is your coach here. Your plan stays; write 'coach' and your words to say hello."
)
GIVEN = "{name} is {coach}'s now. You don't see them any more."
NO_LONGER_YOURS = "That client is no longer yours to look after, so we stop here."
COVER_WHO = "Who stands in for you?"
COVER_DAYS = "From when to when? Like: two weeks, or from 3 to 10 January."
COVER_SET = "{coach} stands in for you. {days}. They see your clients and get the alerts; so do you if they don't answer."
STANDS_IN = "{coach} stands in for you from {first} to {last}."
I_AM_BACK = "I am back"
YOU_STAND_IN = (
    "You stand in for {coach} from {first} to {last}: you see their clients then and get their alerts."
)
FROM_NOW_ON = "From now on you look after {coach}'s clients and get their alerts."
MY_CLIENTS = "My clients"
COVER_OVER_OTHER = "{coach} is back with their clients. Thank you."
COVER_OVER = "Your clients are with you again; {coach} has been told."
NOBODY_STANDS_IN = "Nobody stands in for you."
