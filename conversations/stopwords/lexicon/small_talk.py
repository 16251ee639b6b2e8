"""The closed set of harmless things: a line of these words and numbers alone is never asked about.

No word may be added that can help to say that something is wrong: neither "not", "off", "down", "gone" nor a part of the
body. In `PHRASES` such words stand where their company makes them harmless.
"""

WORDS = """
snug comfy pink danke gut gracias bien todo merci ca va tres tutto bene tudo bem obrigado obrigada viskas gerai aciu wszystko
dobrze dziekuje prego bitte alles grazie fertig pumped pump headphones headband
хорошо спасибо да нет всё отлично
ok okay okey k kk yes yeah yep yup ya y no nope nah n sure maybe perhaps both neither none all each every
any some thanks thank you u ty thx cheers please pls plz sorry welcome bless god hi hello hey hiya bye
goodbye good morning evening afternoon night day days coach dear love mate friend buddy sir madam great fine
nice lovely perfect super awesome amazing brilliant excellent wonderful cool fun happy glad proud loved
loving enjoy enjoyed enjoying excited best better well strong stronger easy easier tough tired hard harder
work worked cancel skip undo resume repeat snooze mute close exit continue haha hahaha lol wow yay hooray
yippee woohoo omg hmm um uh ah oh oops done finished finish ready set sets rep reps round rounds rest count
number numbers last first next other another same more less about around almost nearly under over than then
now soon later already yet still just only again also too very really quite pretty so such much many few lot
lots bit little big small new old long short quick quickly slow slowly a an the this that these those it its
is isnt are was were be been being am im ive ill id i me my mine myself we our us youre your yours he she
his her they them their theyre there theres here and or but if when while because cause as at by for from in
into of on onto to with without between per via up until till since before after during do does did doing
have has had having get got getting go goes going went come came coming take took make made making put use
used using can could will would shall should may might must let lets need needs want wants wanted like likes
liked think thought know knew say says said tell told ask asked show showed give try tried trying keep kept
see saw look looked looking find found buy bought bring brought send sent write wrote read type typed tap
tapped start started starting begin began stay stayed wait waiting plan plans planned change changed move
mean means meant remember forgot forget hope hoping guess what which who whose why how where left right l r
side sides one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen
seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred zero half dozen
once twice monday tuesday wednesday thursday friday saturday sunday mon tue tues wed thu thur thurs fri sat
sun today tomorrow tonight yesterday weekend week weeks weekly month months year years hour hours hr hrs
minute minutes min mins second seconds sec secs january february march april june july august september
october november december spring summer autumn winter noon midday midnight pm oclock early earlier late time
times always usually sometimes often daily date session sessions workout workouts training train trained
trains exercise exercises movement movements squat squats curl curls press presses row rows raise raises
lunge lunges bridge bridges step steps plank planks walk walks walking walked warmup cooldown gym dumbbell
dumbbells kettlebell kettlebells barbell weight weights kg kgs kilo kilos lb lbs pound pounds load loads
band bands cuff cuffs strap straps mat bench chair colour color setup programme program video clip app phone
message messages button buttons reminder reminders calendar settings menu report card screen photo picture
pictures home house garden garage kitchen park shop market supermarket church school office hotel town city
beach pool holiday holidays trip travel travelling traveling flight fly bus car bike drive driving niece
nephew grandkids grandchildren kids children family wedding birthday party dinner lunch breakfast supper tea
coffee cake food dog cat weather rain raining rainy sunny snow snowing windy music song tv game football
match news people luck lucky full heater heating forest mountain river sea lake road street village tomato
potato bread soup meal snack holidaying christmas easter neighbours neighbour grandson granddaughter boss
colleague colleagues meeting shift job business money price cheap paid pay order ordered delivery parcel
post arrived arrives arriving bag box bottle bottles shoes shirt shorts socks trousers clothes towel carpet
sofa table chairs bedroom bathroom corner door window mirror tape marker pen paper book notebook battery
charger internet wifi volume silent recording watch watched watching timer clock swap swapped replace
replaced add added extra bonus special normal regular usual different similar possible available free busy
important true correct clear simple complicated clever smart funny interesting boring quiet relaxed relaxing
motivated keen eager curious confident impressed surprised grateful thankful pleased delighted jealous
hungry thirsty drank drink drinks drinking eat eating ate juice beer wine protein banana apple egg eggs
chicken rice pizza cooking cooked cook bake baked gardening clean cleaning cleaned washing shopping reading
knitting painting paint painted singing sang dance dancing danced swim swimming swam cycle cycling cycled
hike hiking hiked golf tennis yoga pilates bowls fishing camping choir club class lesson teacher student
film cinema theatre radio newspaper letter cards gift present gave given giving share shared sharing meet
met meets visit visited visiting visitor visitors guest guests stranger invite invited join joined joining
leave leaving finally luckily sadly honestly literally obviously clearly slightly fairly especially mostly
together instead otherwise whenever wherever however although though unless counted counting record records
personal target targets aim aims level levels score scores total sum average graph chart fitter leaner
improve improved improving improvement improvements increase increased increasing raised raising lower
lowered lowering reduce reduced heavier lighter lightest heaviest highest fastest quicker wider narrower
longer shorter position posture form technique tempo speed pace range motion angle height width length size
shape spot place places space spaces area areas front middle top bottom centre center end ends everyone
everybody nobody thing things stuff way idea question questions answer reason kind sort progress goal result
results difference ever boring resend trainers jumper leggings indoors outdoors baby grind jars vitamins mistake curtains skipping
wardrobe laundry dishes pension lawn hoover hoovering nappies nursery puppy kettle diary earplugs glasses test tests
exactly definitely absolutely probably certainly actually anyway basically
"""

PHRASES = """
nail polish; nail varnish; painted nails; nails painted; nails are painted; gel nails; fake nails;
day off; days off; week off; time off; bands off; bands are off; took them off; be back; back on; back home;
back at; back from; come back; came back; back to; see you; feel good; feels good; feel great; feels great;
feeling good; feeling great; felt good; felt great; feel fine; feels fine; felt fine; feel easy; feels easy;
felt easy; feel strong; feels strong; felt strong; feeling strong; feeling fine; slept well; head coach; on
my feet; by hand; at hand; no bother; dont worry; no worries; cant wait; cant complain; never mind; not bad;
not sure; dont know; not yet; no problem; no problems; on foot; how are you; why not; or not; not a problem;
out of town; going out; work out; find out; check in; sit ups; push ups; pull ups; step ups; sit down; lie
down; cool down; heads up; thumbs up; eyes on the prize; heart rate monitor; lost count; lost track; of
course; haha im dead; dead tired; dead easy; dead set; slept like a baby; slept badly; for the help; for
your help; help me find; take a deep breath; a deep breath; breathe out; breathing out; breath out; hold my
breath; holding my breath; arm day; leg day; chest day; arms day; legs day; heart is in it; painted my
nails; chest up; doctor says its fine; doctor says it is fine; nothing is wrong; nothings wrong; nothing
wrong; no issues; no issue; shaky hands; hands are shaky; legs are shaky; heavy legs; legs are heavy; legs
like jelly; chest of drawers; back door; fingers crossed; dying for a coffee; dying for a tea; dying for a
drink; made me sweat; worked up a sweat; good sweat; killing it; killer set; killer workout; stroke of luck;
pulled my weight; heavy lunch; cold in here; cold outside; hot outside; hot in here; dark outside; dark
already; red as a tomato; chair stands; went up; went well; moved here; moved house; moved in; move house;
nothing special; nothing new; nothing much; not much; my mums birthday; my dads birthday; head start; chin
up
"""

# Beside a sign that was denied or is over.
OVER = """gone stopped stop disappeared vanished settled passed went away anymore faded eased off hardly barely never once ago ever
    happens happen turns sister brother father mother dad mum mom grandpa grandma husband wife uncle aunt"""

# A part of the body, one of VERBS, and one of WELL: "my knee feels much better".
VERBS = "has have been is are was were feels feel felt looks look looked seems seem"
BESIDE = "been so very really all much a bit still now also perfectly pretty quite absolutely totally both"
WELL = """quiet fine good great better ok okay normal perfect warm pink strong happy lovely nice clear steady pumped jelly toast noodles
    tired broad"""
