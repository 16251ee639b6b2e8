"""The small words around a phrase that change its sense. Lists of words, and regular expressions."""

# --- no, not, n't ---------------------------------------------------------------------------------------
NEGATORS = """no not never none nothing nor neither without zero nope cant dont doesnt didnt isnt arent
    wasnt werent wont hasnt havent hadnt aint shouldnt couldnt wouldnt nobody
    kein keine keinen nicht nessun nessuna nessuno aucun aucune ningun ninguna nenhum nenhuma
    sin pas sans non senza nao sem nie nera ne нет без"""
MERE_NOES = "no nope nah nein non nao nie ne нет"  # as a whole answer
REST_OF_NE = "pas plus rien jamais"  # the second half of the French "ne ... pas"
SOFT_NEGATORS = "hardly barely scarcely"  # enough of a no for pain, not for numbness
# What may stand between a "no" and the thing it denies.
BETWEEN = """so very really that too any in much more a bit little at all feel feels feeling felt have
    having had got get getting been be become go goes gone going turned turning turn look looks looking
    of sign signs the real big bad serious actual particularly especially yet even longer significant
    strange severe left right one both or nor and quite exactly totally completely entirely fully
    constantly seem seems seeming sudden slight problem problems with issues anything me mi mir man mehr
    de di esta estan estoy tengo tiene es ist sind habe hab jest sa mam ho ha sono sta e est sont suis jai ai tem tenho estou
    yra single slightest hint trace touch ounce shred whiff sort kind whatsoever"""
LISTED = """pain numbness numb tingling tingle tingles tingly dizziness dizzy sick nausea faint blue
    white cold pale purple swelling swollen burning cramp cramps headache breathlessness breathless
    weakness blood bleeding hurt hurts chest painful knee elbow shoulder back hip neck needles pins
    urine dark"""
SOME = "much totally completely entirely fully very constantly so"  # "not much tingling" is tingling
PERHAPS = "really exactly quite and"  # "not really numb", "no pain and tingling": ask
VERBS = "hurts hurt tingles burns aches stings"  # "no hurts" may well be "no, it hurts"
PERHAPS_SO = r"\b(?:dont|not|doubt) (?:think|believe)\b"
# "wouldnt say its not numb".
SAYS_NO = r"\b(?:wouldnt|couldnt|cant|wont|dont|not) (?:say|call|claim|pretend)\b"
UNTIL_NOW = r"\b(?:until|till|til) (?:now|today|just|this)\b"
NEVER_BEFORE = r"\b(?:never|not|havent|hadnt|nothing)\b"
LIKE_THIS = r"^ (?:like (?:it|this|that)\b|this bad\b|so bad\b|as bad\b|quite like\b)"
MORE_NOES = r"^ (?:no|or|nor|and no)\b"

# --- over -----------------------------------------------------------------------------------------------
# Said after the thing ("tingling is gone"), unless one of HOLDS stands between.
OVER = (
    r"^((?: \w+){0,5}?) (?:gone|stopped|disappeared|vanished|settled|passed|went away|gone away)"
    r"(?= $| (?:now|after|again|completely|since|thanks|already|pretty|by|away|quickly|at|within|and)\b)"
)
OVER_NEXT = (
    r"^ (?:and |now )*(?:thats|its|that is|it is|that has|it has|all)(?: all| now)?"
    r" (?:gone|passed|over|settled|stopped)\b"
)
HOLDS = "not hasnt isnt wont havent doesnt didnt never still almost nearly mostly cant hardly no"
THINGS = """tingling numbness pain pains dizziness nausea swelling headache cramp burning ache aching
    prickling needles sickness stinging throbbing palpitations bleeding twinge hurting breathlessness
    feeling feelings sensation tingle tingles blue coldness"""
WAS = "was were had went got"
ENDED = "stopped"  # "stopped tingling"
CAME_BACK = r"\b(?:its|is|are|came|come|comes|coming|now) back\b|\bback again\b|\breturned\b"

MINE_IS = r"\bmine (?:is|are|does|do|has|feels|looks)\b"

# --- long ago, somebody else ----------------------------------------------------------------------------
LONG_AGO = (
    r"\b(?:years?|months?) ago\b|\blast (?:month|year|winter|summer|autumn|spring)\b|\b(?:in|since) (?:19|20)\d\d\b"
    r"|\bas a (?:kid|child|teenager|boy|girl)\b|\bwhen i was\b|\bback then\b"
)
LATELY = r"\b(?:last (?:week|night)|yesterday|the other day|this morning|earlier|days? ago)\b"
AGAIN = r"\b(?:like|again|now|today|still|since|same|than)\b"
OTHERS = """wife husband partner boyfriend girlfriend mum mom mother dad father sister brother son
    daughter kid kids child friend neighbour neighbor dog cat grandma grandpa grandmother grandfather
    aunt uncle colleague mate he she"""
MINE = "my i im me mine myself"
OTHERS_PAST = "had gets always sometimes often lot once used have was"
STORY = r"^ when (?:he|she|they|we)\b"

# --- questions and conditions ---------------------------------------------------------------------------
KNOWING = r"\bhow (?:do|can|will|would) i (?:know|tell|see|notice)\b"
SUPPOSED = (
    r"\b(?:what|happens|will|ill|would|should|shall|do|know|tell|and|or) (?:\w+ ){0,5}?(?:if|unless|until)\b"
    r"|\bin case\b|\bwhen (?:should|will|would|does)\b|\b(?:what|should)\b.* when\b"
)
JUST_ASKING = (
    r"\b(?:just (?:asking|curious|wondering)|out of (?:curiosity|interest)|hypothetically|in theory)\b"
)
BARE_IF = r"\b(?:if|unless)\b"
BAD_IF = r"\b(?:bad|ok|okay|normal|dangerous|problem|fine|serious) (if|when|that)\b"
TO_COME = r"\b(?:go|goes|get|gets|become|becomes|turn|turns|start|starts|happens?)\b"
IF_MINE = r"\bif (?:my|i|im)\b.*\b(?:is|are|am|im|feels?|cant)\b"
STARTS_ASKING = r"^ ?(?:would|could|will|does|do|did)\b(?! hardly| barely| only)"
ASKS_WHETHER_NORMAL = r"^ (?:and |but |so |ok )?(?:is|are) (?!it too|this too|that too)"
SAYS_NORMAL = r"\b(?:normal|dangerous|supposed|ok|okay|bad|usual)\b"
ABOUT_NOW = r"\b(?:my|im|i|now|that it|that they|mine)\b"

# --- stop -----------------------------------------------------------------------------------------------
DENIES_STOP = "dont wont didnt never not without doesnt cant shouldnt isnt wouldnt havent arent"
BEFORE_STOP = (
    "want need have to wanna think i we should going gonna will you let me us it ever plan planning im"
)
NO_NEED = (" no need to ", " no reason to ")
STOP_ASKED = (
    r" (?:do|did|does|where|when|why|would|number) (?:do |can |should )?(?:i|we|you|they|it)(?: \w+){0,2} $"
)
SHOULD_STOP = r" should (?:i|we)(?: \w+){0,3} $"
STOP_IF = r"\b(?:if|unless|in case)\b"
STOP_LATER = r"^ (?:when|once|after|between)\b"
AT_A_NUMBER = r"^ (?:at|after) (?:about |around )?[0-9]+\b"

# --- a number beside "pain" is a rating, unless ---------------------------------------------------------
NO_RATING_BEFORE = "rep reps set sets at minute load"
NO_RATING_AFTER = "reps rep kg lb sets set s sec secs seconds min minutes times x"
BESIDE_RATING = """is was of about level score rating number today maybe only around now in the my out
    just like a at still before after during this morning"""

# Small words that a whole-clause phrase may have around it.
SMALL = """please pls plz ok okay oh well just a bit little quite very so really now lol haha hey yes
    the uh um and hmm hm pretty totally slightly coach guys man sorry also then again today"""

# A clause that begins so, or with a sign, goes on about what the clause before named.
GOES_ON = "it its they theyre that thats which both all"

# Said after pain, these make it the burn that sets are for.
AS_USUAL = (
    r"\b(?:as (?:usual|always|expected|normal)|like (?:always|usual)|in a good way|in the best way|the good kind"
    r"|the usual|nicely)\b"
)
