"""The closed set of harmless things: a line of these words and numbers alone is never asked about.

No word may be added that can help to say that something is wrong: neither "not", "off", "down", "gone" nor a part of the
body. In `PHRASES` such words stand where their company makes them harmless.
"""

WORDS = """
ok okay okey k kk yes yeah yep yup ya y no nope nah n sure maybe perhaps both neither none all each every any some
thanks thank you u ty thx cheers please pls plz sorry welcome bless god
hi hello hey hiya bye goodbye good morning evening afternoon night day days coach dear love mate friend buddy sir madam
great fine nice lovely perfect super awesome amazing brilliant excellent wonderful cool fun happy glad proud love loved
loving enjoy enjoyed enjoying excited best better well strong stronger easy easier tough tired hard harder work worked
cancel skip undo resume repeat snooze mute close exit continue
haha hahaha lol wow yay hooray yippee woohoo omg hmm um uh ah oh oops
done finished finish ready set sets rep reps round rounds rest count number numbers last first next other another same
more less about around almost nearly under over than then now soon later already yet still just only again also too very
really quite pretty so such much many few lot lots bit little big small new old long short quick quickly slow slowly
a an the this that these those it its is isnt are was were be been being am im ive ill id i me my mine myself we our us
youre your yours he she his her they them their theyre there theres here and or but if when while because cause as at by
for from in into of on onto to with without between per via up until till since before after during do does did doing
have has had having get got getting go goes going went come came coming take took make made making put use used using
can could will would shall should may might must let lets need needs want wants wanted like likes liked think thought know
knew say says said tell told ask asked show showed give try tried trying keep kept see saw look looked looking find found
buy bought bring brought send sent write wrote read type typed tap tapped start started starting begin began stay stayed
wait waiting plan plans planned change changed move moved moving mean means meant remember forgot forget hope hoping guess
what which who whose why how where
left right l r side sides one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen
seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred zero half dozen once twice
monday tuesday wednesday thursday friday saturday sunday mon tue tues wed thu thur thurs fri sat sun today tomorrow
tonight yesterday weekend week weeks weekly month months year years hour hours hr hrs minute minutes min mins second
seconds sec secs january february march april june july august september october november december spring summer autumn
winter noon midday midnight am pm oclock early earlier late time times always usually sometimes often daily date
session sessions workout workouts training train trained trains exercise exercises movement movements squat squats curl
curls press presses row rows raise raises lunge lunges bridge bridges step steps plank planks walk walks walking walked
warmup cooldown gym dumbbell dumbbells kettlebell kettlebells barbell weight weights kg kgs kilo kilos lb lbs pound pounds
load loads band bands cuff cuffs strap straps mat bench chair colour color setup programme program video clip app phone
message messages button buttons reminder reminders calendar settings menu report card screen photo picture pictures
home house garden garage kitchen park shop market supermarket church school office hotel town city beach pool holiday
holidays trip travel travelling traveling flight fly train bus car bike drive driving
niece nephew grandkids grandchildren kids children family wedding birthday party dinner lunch breakfast supper tea coffee
cake food dog cat weather rain raining rainy sun sunny snow snowing windy music song tv game football match news people
everyone everybody nobody thing things stuff way idea question questions answer reason kind sort progress goal result
results difference exactly definitely absolutely probably certainly actually anyway basically
"""

PHRASES = """
day off; days off; week off; time off; bands off; bands are off; took them off; be back; back on; back home; back at; back
from; come back; came back; back to; see you; feel good; feels good; feel great; feels great; feeling good; feeling great;
felt good; felt great; feel fine; feels fine; felt fine; feel easy; feels easy; felt easy; feel strong; feels strong; felt
strong; feeling strong; feeling fine; slept well; head coach; on my feet; by hand; at hand; no bother; dont worry; no worries;
cant wait; cant complain; never mind; not bad; not sure; dont know; not yet; no problem; no problems; on foot; how are you; why
not; or not; not a problem; out of town; going out; work out; find out; check in; sit ups; push ups; pull ups; step ups; sit down;
lie down; cool down; heads up; thumbs up; eyes on the prize; heart rate monitor; lost count; lost track; of course; haha im dead;
dead tired; dead easy; dead set; slept like a baby; slept badly; for the help; for your help; help me find; take a deep breath; a
deep breath; breathe out; breathing out; breath out; hold my breath; holding my breath; arm day; leg day; chest day; arms day; legs
day; heart is in it; painted my nails; chest up; doctor says its fine; doctor says it is fine;
nothing is wrong; nothings wrong; nothing wrong; no issues; no issue; shaky hands; hands are shaky; legs are shaky; heavy legs; legs are
heavy; legs like jelly; chest of drawers; back door
"""

# A part of the body, one of VERBS, and one of WELL: "my knee feels much better".
VERBS = "is are was were feels feel felt looks look looked seems seem"
BESIDE = "so very really all much a bit still now also perfectly pretty quite absolutely totally both"
WELL = """fine good great better ok okay normal perfect warm pink strong happy lovely nice clear steady pumped jelly toast noodles
    tired broad"""
