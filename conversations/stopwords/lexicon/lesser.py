"""What pauses or ends a session without being a red flag, and what is asked about."""

STOP = """
stop; stopping
end it|this; end|ending the|this|my session|workout|training|set; end|ending|cancel session|workout|training
cancel the|this|my session|workout|training
quit|quitting; give|giving up; abort; halt; call it a day|quits
= enough; thats|had|is enough; enough for today|now; enough now|already
i want|wanna out; want to finish; let me out; done with this
cant go on; cant continue; cant do this any|anymore; cant take|stand this|it|the|any|anymore
dont want|wanna to|do|go|this .. on|continue|more|anymore|any; dont want this|it anymore
{band} off|of; take|taking|get|getting|pull|pulling|rip|ripping|remove|removing {these} off
take|taking|get|getting|pull|pulling {these} {band} off; take|taking|get off {band}
take|taking|get off {these} {band}; remove|removing {these} {band}; remove|removing {these}
want|need {these} .. off; off now|please|me; get this|them|it off me
"""

TIGHT = """
too|to|really|super|so|very|way|extremely|awfully|incredibly tight; too .. tight; tight as
tightness 9|10; tightness is|of|at|now 9|10; tight 9|10
{band} .. cuts|cut|cutting|digs|digging|strangling|squeezing .. in|into; cutting|cuts|digging|digs in|into
cutting off; strangling; overtight
"""

HURTS = """
hurts|hurt|hurting; pain|pains|painful|painfully; ache|aches|aching|achy; ouch|ow|aua|argh|aargh
sharp; stabbing|shooting|throbbing; stings|stinging|stung|sting; pinching|pinches|pinched
twinge|twinges|niggle|niggles|niggling; burns|burning|burn; cramp|cramps|cramping|cramped; {limb} .. fire
killing my; {part}|{limb} .. killing me; cant straighten|bend; agony|excruciating|unbearable|tender
"""

FEVER = """
fever|feverish; high|raised temperature; got|have|running|with a temperature|temp
thermometer|temp .. 38|39|40|101|102|103
temperature .. 38|38.1|38.2|38.3|38.4|38.5|38.6|38.7|38.8|38.9|39|39.1|39.2|39.3|39.5|40|100|101|102|103
"""

SORE = """
so|very|really|super|extremely|incredibly|insanely sore
awfully|terribly|ridiculously|unbelievably|too|crazy|mega|seriously sore
sorer; sorest; worst|terrible|severe|extreme|horrible|awful|massive|crazy|insane|unbelievable|brutal soreness
soreness .. bad|worse|terrible|severe|extreme|worst; sore|soreness .. cant|hardly|barely|worse
never .. so|this|that sore
= sore everywhere; sore all over; stiff as .. board; seized up
= i can|could hardly|barely move; hardly|barely|struggle|struggling walk|walking
hardly|barely|struggling to sit|stand|walk; hardly|barely sit|stand
hardly|barely get up|down|dressed|out .. bed|chair|toilet|stairs|this; cant get dressed
hardly|barely use .. stairs
"""

UNSURE = """
= help; = help me; = i need help; = need help; = help help; = please help; need help now; emergency
something|somethings .. {odd}; something|somethings .. not|isnt right|ok|okay|normal; somethings not right
this|it|thats not|isnt|doesnt right|good|ok|okay|normal; its too much; this is too much
this|it|that|something doesnt|isnt feel|look|seem|feeling right|good|ok|okay|normal
feel|feels|feeling|felt .. weird|strange|odd|funny|wrong; {limb} .. weird|strange|odd|funny
dont feel .. good|well|right|great|ok|okay|normal|myself
not|isnt feeling .. good|well|right|great|ok|okay|normal|myself
feel|feels|feeling .. unwell|awful|terrible|horrible|bad|ill|rough|faint|off|weak
unwell; not ok|okay; im ill|sick|unwell; im not|isnt ok|okay|well|fine|good|right
= not good|ok|okay|well|right|fine|great
scared|worried|panic|panicking|afraid|frightened|anxious; uncomfortable
= weak; so|very|really|too weak
= wait; = wait wait; = wait sec|second|minute|moment|there; = hold|hang on; = hold|hang on sec|second|minute
= pause; = one moment|sec|second|minute; need .. break
had|i|just|we stopped; = stopped; tookoff
headache; migraine; out of breath; winded; heartburn
= its cold; = it is cold; = im cold|freezing; = i am cold|freezing
im|i dying|die; = dying; this is killing me; killing me
= cant; = i cant; cant do .. more|it|this|another; = no more
chest .. sore|stiff; sore chest
{band} .. snapped|broke|ripped|burst|tore
cant talk|breath
no|outta puff; lost my breath|puff; had to grab|hold|clutch|catch .. sink|wall|doorframe|door|banister|rail|counter|table|chair
rash|itchy|itching|itches|blister|blisters|bruise|bruised|bruising|trembling|shivering|shivers|chills|confused
my|your|her|his|the {head} is|feels|feel|are|has|have|went|gone|goes|going|keeps|wont|doesnt|isnt
{head} is|feels|went|has|wont|doesnt|keeps; my heads|hearts
"""
