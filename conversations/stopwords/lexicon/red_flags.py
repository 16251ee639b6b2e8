"""What stops a session at once, gravest first."""

EMERGENCY = """
cant|couldnt|wont fill .. chest|lungs; sound|sounded|sounding .. drunk|slurry|slurred
{chest} .. {hurts}; {hurts} .. {chest}; chest pains; hurts in the middle of my chest
elephant|weight|something|someone|somebody|brick|ton .. on .. {chest}
standing|sitting|pressing|lying on .. {chest}
 stabbing .. {chest}
jaw .. {hurts}; {hurts} .. jaw; {limb} .. jaw
cant|barely|hardly {breath}; cant .. {breath} properly|well; cant get|catch|draw|take .. breath|air
short|shortness of breath; breathless|breathlessness; no air; gasping|wheezing|wheezy|choking
hard|difficult|struggling|struggle|trouble|difficulty|fighting|gulping to|with|for|in {breath}
trouble|difficulty|struggling {breath}
{chest}|breathing isnt|doesnt|not right|ok|okay|good|normal|well; {chest}|breathing isnt|doesnt feel|feeling|look right|good|ok|okay|normal
breath|breathing isnt|wont|doesnt|not come|coming|work|working|go|going; without air|oxygen
really|very|badly|still|totally|completely|so winded
really|very|badly|still|totally|completely out of breath; out of breath .. wont|cant|lying|sitting|resting
throat|tongue .. closing|closed|swelling|swollen
{fainted}; keeled over; did keel over; passed|blacked out; knocked|out cold; lost|losing consciousness; unconscious
woke|came up|to|round .. floor|ground; came to on
{weak} .. one side; {side} side .. {weak}|numb|paralysed|paralyzed|dead|floppy|limp|useless; half my|of body|face|side
paralysed|paralyzed
suddenly .. {weak}; suddenly cant lift|move|use|feel|talk|speak|see; sudden {weak}
{side} {limb} went|gone|goes|going {weak}
{weak}|numb .. sudden|suddenly; arm and|n leg .. {weak}|numb|heavy|useless|dead
face|mouth|lip|eyelid .. drop|dropping|drooped|sagging|sags|falling
face|smile|tongue is|feels|looks|went {odd}|heavy|uneven|crooked|lopsided|twisted
{chest} feels|felt|feel like; heart .. squeezed|squeezing|crushed|crushing|stabbing|hurts|hurting|aches|aching|painful
face|mouth .. droopy|drooping|droops|numb|paralysed|crooked|tingling|hanging|dropped|lopsided
drooping face|mouth|eye|eyelid; side of .. face
slurred|slurring|slur; cant speak; cant talk properly|right; cant find|get|form|say|make|produce .. words; tongue .. thick
words|speech .. wrong|jumbled|gibberish|funny|strange|weird|odd|slow; talking gibberish|funny
cant move .. side; cant see .. eye|eyes; lost|losing .. vision|sight; blurred|blurry|double vision
vision .. blurred|blurry|gone|double; seeing|looks|look|see double; went|going|gone blind
never|not had|known|felt .. headache like|before|so; headache like never
{awful} .. headache; headache .. {awful}; headache .. nowhere; worst head pain
head .. exploding|explode|explodes|bursting; sudden|worst|terrible .. head; head .. worst|suddenly
stroke; heart attack; heart stopped|stops; angina
coughing|coughed|cough|spat|spitting|bringing|brought .. blood
ambulance; call 911|999|112|000
lips|lip|face .. {turned} .. blue|purple|grey|gray; lips .. blue|purple; blue lips
seizure|convulsion|convulsions
kill myself; end my life; suicidal
"""

FAINT = """
nearly|almost hit the deck|floor|ground
dizzy|dizziness|dizzier; lightheaded|lightheadedness; light|lite headed; light .. head; light head
woozy|wobbly|faints|giddy|faintish|swaying|staggering|unsteady; off balance; losing .. balance
feel|feeling|felt|bit|getting|i faint; to|gonna|might|could|will|may faint; = faint
to|gonna|might|could|will|may pass|black out; to|gonna|might collapse; keel|keeling over
room|head|heads|everything|world .. spinning|spins|swimming
room|head|everything|world is|keeps|just|still going|turning|spinning round|around
room|head|everything|world goes|turns|going|turning round|around; room turns|turning|moves|moving|tilts|tilting|rotates|rotating
feel|feels|feeling like fainting|vomiting; fainting
 = spinning; = spinning head
it|things|screen|suddenly {turned} black|dark; {turned} black|dark for|before; black|dark before|in .. eyes
greyed|grayed out; saw black
saw|seen stars|spots|dots|sparkles; sparkles|stars .. eyes; lights .. out; nearly|almost fell|keeled|went down
seeing|see stars|spots|dots|sparkles; black spots|dots
seeing|see|saw black|white|dark|floating|bright|little|flying stars|spots|dots; tunnel vision
everything|all|vision .. {turned} black|dark|white|dim|narrow; vision .. fading|darkening|narrowing
feel|feeling|felt|feels .. sick; to|gonna|going be sick; sick .. stomach
nauseous|nausea|nauseated|queasy; throw|threw|throwing up; vomit|vomits|vomiting|vomited
puke|puking|puked
cold sweat|sweats; clammy; sweating cold; cold and|n sweaty; ringing in .. ears; ears .. ringing
heart|hearts .. {mad}; heart .. missed|misses|missing|extra|dropped .. beat|beats
heart beating|beats .. fast|hard|mad; pulse .. {mad}; heart .. so|too|very|really|super fast
heart .. wont|cant slow|calm
palpitation|palpitations; heart|pulse|ticker .. samba|rumba|tango|dancing|jive|jig|somersaults
"""

NERVE = """
{numb}; {numb} feeling|feelings|sensation|sensations
pins|pin and|n|an|or|nd needles|needle; pins needles
cant|dont|couldnt|barely|hardly feel|sense {my} .. {limb}; cant|dont|couldnt|barely|hardly feel|sense {limb}
cant|dont|couldnt really|properly|fully|quite|even|hardly feel {my} {limb}; no longer feel .. {limb}
{limb} dont|doesnt|cant feel anything|nothing|it|much; no sense in .. {limb}
no feeling|sensation; lost|losing|loss .. feeling|sensation; feeling .. {limb} .. gone
{limb} is|are|feels|feel|felt like wood|cotton|cardboard|plastic|marble|stone
{limb} .. asleep|sleep|sleepy|sleeping; ants|insects|bugs|crawling .. {limb}; {limb} .. ants|crawling
 dead {limb}; {limb} .. gone|went|goes|is|feels dead; {limb} .. lifeless|wooden
electric|electrical shock|shocks; {limb} .. buzzing|buzzes|fizzing|fizzy|fuzzy|zapping; buzzing|buzzy|fizzing|fizzy .. {limb}
"""

LIMP = """
cant|couldnt|barely|hardly|struggle|struggling move|lift|raise|use|close|open {my} .. {limb}
cant|couldnt|barely|hardly move|lift|raise|use|close|open {limb}; cant .. grip|lift|raise|open|close .. {limb}
cant|couldnt|barely|hardly grip
cant|couldnt|barely|hardly hold .. cup|mug|glass|spoon|fork|pen|phone|kettle|key|keys|bag
cant|couldnt|barely|hardly make .. fist; cant|couldnt|barely|hardly turn .. key|tap|doorknob
trouble|difficulty|problem|problems|hard moving|lifting|raising|gripping|using .. {limb}
hard to lift|raise|move|grip .. {limb}
{limb} .. wont|doesnt|isnt|not move|moving|respond|responding|work|working|obey; wont move
{limb} .. gave|gives|give|giving way; {limb} .. drags|dragging|limp|useless|floppy
dragging .. foot|leg; foot|wrist drop; dropped foot|wrist
keep|keeps|kept dropping things|everything|stuff|it|cups
"""

WEAK = """
{limb} .. gave|gives|give|giving|given out on|under|beneath|walking|standing
{limb} .. {weak}; {weak} .. {limb}; {weak} muscle|muscles; muscle|muscles .. {weak}; weakness in
muscle weakness
no|lost|losing|hardly|barely|lack .. strength|power in .. {limb}; {limb} .. no strength|power
{limb} .. lost .. strength|power; {limb} .. powerless|strengthless|feeble
= cant walk; = cant stand|climb; = cant stand up; {weak} to walk|stand|lift|climb|hold|get|use|grip|sit|move
cant stand on .. {limb}
cant|couldnt get up|out .. chair|bed|toilet|sofa|floor|stairs; cant|couldnt climb|manage .. stairs|steps
{limb} .. collapsed|buckled|buckle|buckles|buckling; {limb} .. paralysed|paralyzed
"""

CIRCULATION = """
{limb} .. {blue}; {blue} {limb}; {icy} {limb}; {limb} .. {icy}
blueish|bluish; white as a|chalk; gone|went as white; no colour|color; lost .. colour|color
its|it {turned} .. {blue}; {turned} blue|purple|grey|gray|pale|white|blueish|bluish
its|is|it blue|purple|grey|pale|white; theyre|they {blue}; {limb} .. colder|paler|whiter|bluer
= {blue}; = {blue} {blue}; = red {blue}; = {turned} {blue}
spot .. stays|stay|wont|doesnt|isnt|remains|still
colour|color .. isnt|doesnt|wont|not .. back|return|returning|come; colour|color .. drained
skin .. gone|went|going|turned|turning|looks|stays .. {blue}; {wont} pink|pinking|pinks up
no pulse; cant feel .. pulse; mottled|discoloured|discolored|marbled|blotchy
is {blue} normal|ok|okay .. {limb}
"""

URINE = """
{dark} .. {urine}; {urine} .. {dark}; cola|tea|coke coloured|colored; myoglobin; rhabdo|rhabdomyolysis
{dark} when i {urine}; hardly|barely|havent peed|peeing|urinated|urinating; cant|couldnt pee|urinate|wee
stopped peeing
"""

SWELLING = """
swollen|swelling|puffy|ballooned|swells; swelled up
calf|calves is|are|feels|feel|gone|went hard|rock; calf|calves .. {warm}; {warm} calf; {warm} .. calf|calves
one {limb} .. bigger|thicker|fatter; {limb} .. double|twice the size
{limb} .. bigger|thicker|fatter than the|my other
one .. {limb} .. warmer|redder|bigger|thicker|fatter|hotter|swells
{limb} .. like .. balloon|balloons|sausage|sausages
blood clot; clot in; clot|thrombosis|dvt|embolism; lump in .. calf|thigh|leg|arm|groin; calf .. hard and|as
red streak|streaks|line
"""

INJURY = """
i .. fell; = fell; fell over|down|off|on|downstairs
fell in|at|on the|my shower|bath|bathroom|kitchen|garden|street|bus|snow|ice|gym|stairs|house
 and fell; i .. fallen
heard|felt|hear a pop|snap|crack|click|tear|rip; something .. popped|snapped|tore|ripped|cracked|torn
{limb}|{part} .. popped|snapped; tore|torn .. muscle|tendon|something|ligament|calf|bicep|biceps|hamstring
bleeding|bleeds|bled|blood
hit|banged|bumped|knocked .. head
dropped .. on .. {limb}; hit .. {limb}; twisted|sprained|broke|broken|crushed|dislocated .. {limb}; dislocated
pulled a|my muscle|hamstring|calf|groin|back; pulled something; gave|giving way
"""

STUCK = """
= no|nope {wont} come|coming off|loose|undone; = no|nope {wont} open|budge|release|loosen|undo|move
{no_way} undo|unclip|unbuckle|unfasten|unstrap .. thing|things
{catch} .. stuck|jammed|caught|trapped; stuck|jammed|trapped {catch}
stuck|jammed|caught on|round|around {my} {limb}; stuck|jammed|caught on|round|around {my} {side} {limb}
= stuck; = jammed; help .. stuck|jammed; = its|theyre|both|left|right stuck|jammed|caught
= it|they|one|left|right is|are|got stuck|jammed|caught
= left|right|one|other one is|got stuck|jammed; = one stuck|jammed; = im stuck in it|them|this
{catch} {wont} open|opening|opens|release|releasing|undo|loosen|budge|move|come|coming|let|go|slide|work|working
{catch} .. {wont} come|coming|get|going off|loose|undone; {catch} .. {wont} {undo}
it|they|this|that|these|those|one|left|right|both {wont} come|coming off|loose|undone
it|they|this|that|one|left|right|both {wont} budge; = it|they {wont} open|release|loosen
= {wont} open|budge|release|loosen|undo|move; = {wont} come|coming off|loose|undone
{no_way} get|take|pull|slide|bring|rip|roll {these} off; {no_way} get|take|pull|slide|bring {these} {band} off
{no_way} get|take|pull {these} {side} {band} off; {no_way} get|take|pull {these} {side} off
{no_way} get|take|pull off {these}; {no_way} get|take|pull off {band}; {no_way} to get|take|pull {these} off
{no_way} get|take|pull {these} {side} one off; {no_way} get {band} off; {no_way} get out of {these}
{no_way} {undo} {these} {band}|{catch}; {no_way} {undo} {these} {side} {band}|{catch}; {no_way} {undo} {band}|{catch}
{no_way} {undo} those|these|both|either; {no_way} undo|loosen|unclip|unbuckle|unstrap|unfasten|unhook|untie it|them|this
= {no_way} {undo}; = {no_way} {undo} it|them
not able|possible to get|take|pull|undo|loosen|open {these} off|open|undone
not able|possible to undo|loosen|unclip|unbuckle|unstrap|unfasten it|them|these|this; no way to get|take {these} off
{no_way} remove|unwrap|unlock|unfasten|unhook it|them|this
too tight .. cant|to {undo}|get|remove; no way to {undo} it|them|these|this
struggling|strugglin to get {these} off
"""
