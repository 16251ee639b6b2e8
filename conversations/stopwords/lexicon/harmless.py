"""Harmless wordings, taken out before anything is looked for; after ">" what is left in their place."""

HARMLESS = """
caught|catches|catching my|the|some skin|hair|hairs > pinches; something popped > something snapped
banda|bandas|cinta|cintas|goma|gomas|faixa|faixas azul|azules|azuis|blanca|blancas|branca|brancas|morada|roxa
bande|bandes|élastique|élastiques bleu|bleue|bleues|blanc|blanche|blanches|violette
fascia|fasce|elastico|banda blu|bianca|bianche|viola; biała|białe|sina taśma|taśmy|guma|gumy|opaska
mėlyna|mėlynos|balta|baltos juosta|juostos|guma|gumos; синяя|синие|белая|белые лента|ленты|резинка|резинки
bus|pit|full|train|tram|non stop; nonstop
stop {chatter}; stop the|my|your|all|those|these|with {chatter}; stop with the {chatter}
stop at|for lights|light|traffic|crossing|crossings|kerb|junction; stop at|for the|a lights|light|crossing|road|kerb|junction
stop {cheer}; stop at|in the top|bottom|middle; reason to stop; no stopping; had to stop > had stopped
quit smoking|drinking|sugar|job
day|days|week|time off
took|taken .. {band} off|of > tookoff; took|taken {these} off > tookoff
took|taken off {these} {band} > tookoff; took|taken off {band} > tookoff
the {blue} {limb} band|cuff; {blue} {limb} towel|cream|strap|straps|wrap|sleeve|sleeves|brace|warmers|weights|roller > _
{blue} {thing}; the blue|white|purple|cold; blue or|and white
below|under|past the {band} > _
{band} is|was blue|white|purple|grey|gray
{band} a|b|c|d .. is|was blue|white|purple|grey|gray
how {blue}; too {blue}
white spot > spot
numb of|reps|sets
a cold; cold since; cold in here|my|the
its|it is|so|very|really cold outside|here|today|in
chest press|presses|day|supported|strap|workout|exercise|muscle|muscles|fly|flies
chest and back|arms|triceps|shoulders
heart|hearts is|are set on; burn is real|good|nice|great|lovely; numb from|with|of boredom
feel|feeling|love|good|nice|usual|normal|great the burn; good|nice|usual|normal|great|lovely burn
burn|burned|burns|burning nicely; a burner
muscle burn only|just; just|only muscle burn; just|only a|the burn
burn kcal|calories|fat; burn .. kcal|calories
nearly|almost killed me
sick of
phone|bar|band|bands|dumbbell|weight|mat|bottle|cup|glass|box|picture|book|keys fell > dropped
fell asleep > asleep; fell off the|my plan|wagon; fell to|short|behind|through; fell|fallen in love|behind
i|just|quickly popped out|in|over|round|by|up; popped out|in|over for|to
stroke of|rate; breast|back stroke; chicken|turkey|duck breast|breasts; breast cancer|milk|feeding|pocket
heart of|rate; by heart
faint memory|line|idea
blood pressure|flow|test|tests|sugar|thinner|thinners|work|type|donation
gave|giving|give|donate|donated blood
sharp at|knife|knives|pencil; time sharp
the|my|your weak|weaker {limb} > leg
weak coffee|tea|side|sides|spot|point
calf raise|raises; warm up|ups|water
good enough
{nearly} {fainted} > faintish; {nearly} passed|blacked out > faintish; {nearly} keeled over > faintish
at once
as if > like
whats wrong with; {head} is|are full of|up; head is in|on|at .. work|office|clouds|shed
hurt to ask; cant hurt; wouldnt hurt; hurt nobody; never hurt anybody|anyone
cant speak|talk now|at; cant speak|talk right now; one stop
no pain no gain; not pain free > pain; not painless > pain; pain free
painkiller|painkillers; pain relief
head out|home|off|start|coach; off the top of my head; head of
{head} is|are|feels|looks fine|good|ok|okay|great|normal now|again > my head is
{head} is|are|feels|looks great|fine|perfect|strong|healthy|normal|clear; {head} is|are good|ok|okay
breathless with excitement|joy|laughter; took|takes|taking my|your|the breath away
stop being|playing|making|adding|counting; stop using the .. weight|weights|dumbbell|dumbbells|app|beat|sound|music|bar
boss|app|phone|traffic|work|update|printer is|was a pain
blood orange|oranges|sausage|sausages; passed out flyers|leaflets|sweets|cards|papers|drinks|cake|programmes
{no_way} remove it|them|this from|in|on; numb to; is|was a pain to
face to|time; in the face of; on the face of
heart emoji; love hearts; heart goes|went out to
"""
