"""Parts of the body, what they can do wrong, and which pairs of the two are a sign: read in any order of the words.

A class is a line of words, with ";" between; what stands between two ";" may be several words. A rule names a kind
and the classes that must stand together in one clause. To add a way to say something, add a word to its class: every
rule that names the class reads it. British, American, Indian and African English, and how older people say it.
"""

PARTS = {
    "chest": """chest; breast; breasts; breastbone; sternum; rib; ribs; ribcage; rib cage; bosom; middle of me;
        middle of my body; centre of me; center of me; lungs; lung""",
    "heart": "heart; ticker; pulse; heartbeat; heartbeats; heartrate; heart rate; heart beat; heart beats",
    "breath": "breath; breaths; breathe; breathing; breathes; air; oxygen; puff; inhale; inhaling; breathin",
    "inbreath": """breath; breathe; breathing; inhale; inhaling; breathe in; breathing in; deep breath; deep breaths;
        cough; coughing""",
    "face": "face; cheek; cheeks; mouth; lip; lips; smile; eyelid; eyelids; brow; grin",
    "lips": "lip; lips; tongue; gums; mouth; face",
    "throat": "throat; tongue; gullet; windpipe; airway; airways",
    "jaw": "jaw; jaws; jawbone",
    "speech": """speech; speak; speaking; speaks; talk; talking; talks; words; word; sentence; sentences; voice""",
    "sight": "eye; eyes; eyesight; sight; vision; eye sight",
    "head": "head; skull; brain; temple; temples; headache; headaches; migraine",
    "limb": """hand; hands; finger; fingers; fingertip; fingertips; thumb; thumbs; pinky; pinkie; palm; palms;
        nail; nails; nailbed; nailbeds; knuckle; knuckles; wrist; wrists; arm; arms; forearm; forearms;
        elbow; elbows; bicep; biceps; tricep; triceps; leg; legs; thigh; thighs; quad; quads; hamstring;
        hamstrings; hammy; calf; calves; calfs; shin; shins; foot; feet; toe; toes; ankle; ankles; knee;
        knees; limb; limbs; heel; heels; sole; soles; instep; lower leg; upper arm; extremities""",
    "calf": """calf; calves; calfs; shin; shins; lower leg; back of leg; back of my leg; back of the leg; behind my
        knee""",
    "muscle": """muscle; muscles; bicep; biceps; tricep; triceps; quad; quads; hamstring; hamstrings; calf; calves;
        thigh; thighs""",
    "trunk": """back; neck; shoulder; shoulders; shoulderblade; shoulderblades; hip; hips; groin; stomach; belly;
        tummy; gut; guts; abdomen; flank; armpit; collarbone; spine; buttock; buttocks; bum; glute; glutes;
        waist; joint; joints; tendon; ligament; bone; bones; nerve; nerves; vein; veins; throat; nose; ear;
        ears; bladder; kidney; kidneys; body; muscle; muscles; skin""",
    "urine": """urine; wee; pee; piss; peeing; weeing; peed; urinate; urinated; urinating; passing water; pass
        water; passed water; passing urine; toilet; loo; toilet bowl; waterworks; bowl""",
    "wees": """urine; wee; pee; piss; peeing; weeing; peed; urinate; passing any water; passing water; pass water;
        passing urine""",
    "skin": "skin; flesh",
    "room": """room; world; wall; walls; floor; ceiling; house; everything; surroundings; kitchen; ground; place""",
    "band": "band; bands; cuff; cuffs; strap; straps; buckle; velcro",
    "other": """she; shes; he; hes; mum; mom; mother; dad; father; wife; husband; partner; gran; nan; grandma;
        grandmother; grandad; granddad; grandpa; grandfather; granny; client; patient; lady; gentleman; old
        man; aunty; auntie; aunt; uncle; sister; brother; friend; daughter; son; neighbour; neighbor; madam;
        him; her; papa; mama; amma; baba; appa; daddy; mummy; mam; hubby; missus""",
}

SIGNS = {
    "hurt": """hurt; hurts; hurting; hurted; pain; pains; paining; pained; painful; ache; aches; aching; achey;
        achy; stab; stabs; stabbing; burn; burns; burning; burnt; sting; stings; stinging; throb; throbs;
        throbbing; shooting; agony; excruciating; unbearable; tender; cramp; cramps; cramping; spasm;
        spasms; knife; sharp; on fire; catches; discomfort; uncomfortable; grinding; gnawing""",
    "press": """pressure; pressing; presses; pressed; tight; tightness; tightening; tightened; tightens; squeeze;
        squeezes; squeezing; squeezed; crush; crushes; crushing; crushed; heavy; heaviness; vice; vise;
        clamp; clamped; gripping; gripped; fist; elephant; belt; constricted; constricting; fullness; brick;
        bricks; concrete; sitting on; standing on; closing; closing in; weight on; a weight; weighed;
        bursting; being sat on; stood on; bearhug; bear hug""",
    "indigestion": "indigestion; heartburn; acid; reflux",
    "odd": """weird; strange; odd; funny; wrong; peculiar; queer; iffy; off; not right; not normal; not ok; not
        good; unusual; bad; horrible; awful; terrible; dodgy""",
    "numb": """numb; numbed; numbing; numbs; numbness; tingle; tingles; tingled; tingling; tingly; prickle;
        prickles; prickling; prickly; pricking; fizz; fizzing; fizzy; buzz; buzzing; buzzes; crawling;
        crawlies; creepy crawlies; ants; insects; bugs; asleep; sleepy; gone to sleep; going to sleep; wont
        wake up; not waking up; not woken up; wooden; rubbery; no feeling; no sensation; no sense; cant
        feel; cannot feel; dont feel; couldnt feel; not feeling; lost feeling; lost the feeling; lost all
        feeling; lost sensation; loss of feeling; pins and needles; pins n needles; pins needles; pin and
        needle; deadened; insensitive; static; zapping; zaps; electric; electricity; electric shocks; gone
        dead; went dead; goes dead; going dead; feels dead; feel dead; still dead; gone to jelly; cotton
        wool; not feel; cant tell""",
    "colour": """blue; bluish; blueish; bluey; purple; purplish; violet; grey; gray; greyish; white; whitish; pale;
        paler; pasty; ashen; ashy; waxy; dusky; blackish; mottled; blotchy; marbled; bloodless; discoloured;
        discolored; no colour; no color; funny colour; strange colour; wrong colour; odd colour; lost
        colour; lost its colour; ghostly; gone black; going black; turned black; turning black; plum; corpse""",
    "cold": "cold; icy; ice; iced; freezing; frozen; chilly; stone cold; colder; fridge; block of ice",
    "swollen": """swollen; swelling; swell; swells; swelled; swole up; puffy; puffed up; puffing up; ballooned;
        ballooning; balloon; bloated; engorged; fatter; blown up; blowing up; blew up; twice the size;
        double the size; doubled; sausage; sausages; football; melon; tree trunk; tree trunks; shiny; filled
        up; full of fluid; fluid; filling up; expanded""",
    "warm": "hot; warm; hotter; warmer; burning; heat; on fire; boiling",
    "red": "red; reddish; redder; scarlet; inflamed",
    "hard": "rock; rocks; stone; solid; woody; rigid; hard; like wood; like a board",
    "fails": """limp; floppy; lifeless; useless; paralysed; paralyzed; powerless; feeble; gives way; gave way;
        giving way; given way; wont move; wont work; wont lift; wont grip; wont bend; wont straighten; wont
        close; wont open; wont do; wont respond; wont listen; wont obey; wont hold; wont go; doesnt move;
        doesnt work; doesnt lift; doesnt respond; doesnt listen; doesnt obey; doesnt do; cant move; cant
        lift; cant raise; cant grip; cant hold; cant use; cant open; cant close; cant control; cant wiggle;
        cant stand on; couldnt move; couldnt lift; couldnt raise; couldnt grip; couldnt hold; not working;
        not moving; not responding; stopped working; flops; flopping; flopped; drags; dragging; dragged;
        buckled; buckles; buckling; no strength; no power; lost strength; lost power; lost all strength;
        lost all power; keep dropping; keeps dropping; packed up; packed in; conked out; unable to move;
        unable to lift; hard to move; hard to lift; wont come up; gone limp; not lifting; not obeying;
        refuses; refusing; wont cooperate; without strength; lost control; lost grip; collapsing under""",
    "beats": """racing; races; race; raced; flutter; fluttering; flutters; fluttery; skip; skips; skipping; skipped;
        thump; thumping; thumps; thudding; pound; pounding; pounds; hammering; gallop; galloping; irregular;
        erratic; jumping; jumps; flipping; flip; flips; flops; somersaults; clappers; bouncing; all over the
        place; missing beats; missing a beat; wont settle; wont slow; wont calm; out of rhythm; too fast; so
        fast; very fast; really fast; going mad; going crazy; going nuts; going wild; running wild;
        palpitating; uneven; like a drum; like a train; out of my chest; like mad; like crazy; drumming;
        banging; leaping; wont stop racing; stops and starts""",
    "short": """short; shortage; cant; couldnt; hardly; barely; struggle; struggling; struggles; fight; fighting;
        gasp; gasping; difficult; difficulty; trouble; losing; run out; ran out; running out; runs out;
        unable; laboured; labored; shallow; not enough; isnt enough; never enough; wont come; not coming;
        stuck; suffocating; starved; battling; hard to; not getting; fast and shallow; rapid; panting; not
        able; not reaching; doesnt go; need; wanting; scarce""",
    "slurs": """slurred; slurry; slurring; slurs; slur; jumbled; garbled; garbling; gibberish; mumbling; mumbled;
        muddled; nonsense; rubbish; not making sense; not making any sense; makes no sense; making no sense;
        doesnt make sense; backwards; like drunk; drunk; mixed; mixing up; mixed up; tangled; wont form;
        wont come out; cant get; cant find; not coming out; wrong; stuck; cant understand; cant speak; cant
        talk; strange; funny; thick; lisp; lisping; stammering; babbling; slow; lost""",
    "droops": """droop; drooped; drooping; droopy; droops; lopsided; lop sided; crooked; twisted; slanted; slanting;
        sagging; sags; sag; sagged; sliding; slid; slipped; hanging; uneven; wonky; skewed; one sided;
        onesided; wont lift; wont move; wont go up; fallen; dropped; dropping; drops; falling; dribbling;
        drooling; dribble; paralysed; paralyzed; stiff; pulled down; squint; drop; pulling down; pulled to
        one side; pulling to one side; turned to one side; gone to one side; bent; asymmetrical""",
    "dims": """blur; blurs; blurred; blurry; blurring; double; doubled; darkening; dim; dimming; dimmed; gone;
        going; foggy; cloudy; misty; fuzzy; hazy; curtain; shade; shadow; cant see; lost; losing; flashing;
        flashes; zigzag; zigzags; blind; patchy; missing; half; narrowing; narrow; grey; fading; faded;
        wavy; out of focus""",
    "see": "see; seeing; saw; seen; sees",
    "lights": """stars; spots; dots; sparkles; double; sparks; floaters; zigzags; halos; flashes; two of everything;
        two of you; two of it; two of them; twice; black; lights; blobs; wavy lines; snow; two phones; flies""",
    "spins": """spin; spins; spinning; spun; reeling; whirling; swimming; tilting; tilts; tilted; turning; swaying;
        rocking; rotating; moving; going round; going around; wobbling; rolling; sideways; upside down""",
    "sweat": "sweat; sweats; sweating; sweaty; clammy; sweated; perspiring; drenched",
    "sudden": """sudden; suddenly; abrupt; abruptly; all of a sudden; out of nowhere; out of the blue; thunderclap;
        in an instant; just went; from nowhere; in a second""",
    "awful": """worst; awful; horrendous; splitting; severe; blinding; exploding; explode; exploded; explodes;
        bursting; burst; pounding like; thunderclap; killer; like a hammer; hit by; hit with; cracked open;
        unbearable; excruciating; violent; vicious; split""",
    "dark": """dark; darker; brown; brownish; black; red; reddish; pink; cola; coke; tea; coffee; rust; rusty;
        port; wine; blood; bloody; orange; treacle; cocacola; chai; stout; mahogany; maroon; pepsi;
        guinness; ribena; beetroot""",
    "dry": """hardly; barely; no; nothing; none; cant; couldnt; havent; stopped; unable; trickle; drop; drops;
        drips; not able; hardly any; dried up""",
    "brings up": """cough; coughs; coughed; coughing; spat; spit; spitting; brought up; bringing up; hacking; hacked;
        sputum; phlegm; spittle; vomited; vomiting; threw up; throwing up""",
    "blood": "blood; bloody; pink; bloodstained; blood stained; bloodied; froth; frothy; red",
    "gone over": """collapsed; collapsing; collapse; slumped; slumping; unresponsive; unconscious; fitting; seizing;
        convulsing; jerking; not answering; not responding; wont answer; doesnt answer; doesnt respond; wont
        respond; wont wake; wont wake up; cant wake; not waking; not waking up; not breathing; stopped
        breathing; isnt breathing; isnt responding; isnt answering; passed out; blacked out; foaming; out
        cold; keeled over; keeling over; went over; gone over; went down; went floppy; fell down; crumpled;
        fainted; fainting; not moving; isnt moving; having a fit; eyes rolled; limp; convulsions; on the
        floor; isnt waking up; lifeless; not with us; staring into space; seizure; gone; twitching all over;
        shaking all over; cant be woken; wont open""",
    "muddled": """confused; muddled; disoriented; disorientated; delirious; incoherent; gibberish; nonsense; rubbish;
        rambling; not making sense; not making any sense; makes no sense; making no sense; isnt making
        sense; doesnt make sense; doesnt know; dont know what day; cant remember; vacant; blank; drowsy;
        slurring; slurred; slurry; babbling; forgotten; not himself; not herself; not recognising; doesnt
        recognise; not recognizing; doesnt recognize; repeating; wandering; staring; talking funny; talking
        strange; talking weird; talking strangely; talking nonsense; cant get; cant find""",
    "off colour": """grey; gray; white; pale; blue; ashen; pasty; clammy; sweaty; sweating; waxy; purple; green; yellow""",
    "unwell": """sick; ill; nauseous; nausea; queasy; dizzy; faint; light headed; lightheaded; woozy; unwell; poorly;
        rotten; awful; rough; giddy; wobbly; vomiting; nauseated; sickly""",
    "popped": """popped; pop; pops; popping; snapped; snap; tore; torn; ripped; rip; cracked; crack; twang; pinged;
        crunched; crunch; ping""",
    "split": """split; splitting; broken; torn; tearing; tore; cut; open; peeling; blistered; blister; blisters;
        raw; bleeding; bruised; bruises""",
    "bites": """biting; bites; bit; strangling; strangles; choking; throttling; digging; digs; cutting; cuts;
        garrotting; tourniquet""",
    "ringing": "ringing; ring; buzzing; whooshing; roaring; muffled; blocked; humming; whistling; pulsing",
    "ears": "ear; ears",
    "balance": """balance; walk straight; stand straight; walk in a straight line; upright; straight line; veering;
        veer; steady; feet""",
    "lost": "lost; losing; cant; couldnt; no; wont; cant keep; off; keep; hardly; barely",
    "onside": "left side; right side; one side; half my; half of; whole left; whole right",
}

# Said of nothing in particular, these make words that nobody could read worth a question.
TOUCHES = """chest heart breath face throat jaw head limb trunk sight calf hurt numb swollen fails slurs droops
    unwell muddled gone_over popped split"""
ALARM = """help; emergency; scared; frightened; frightening; panic; panicking; worried; worrying; worry; wrong;
    terrible; horrible; awful; dying; die; hospital; ambulance; doctor; casualty; nurse; weird; strange;
    odd; funny; queer; peculiar; faint; sick; ill; unwell; poorly; grim; iffy; rough; blood; bleeding;
    dizzy; collapse; collapsed; fell; worse; worst; hurt; alone; afraid; urgent; serious; emergencies; sos;
    spinning; shivering; shaking; fever; blue; purple; weak; lump; bruise; bruises; rash; sleepy; drowsy;
    exhausted; confused; blister; not well; not right; not good; not doing well; suddenly; sudden; too
    tight; no strength; no power; cant get up; cant wake; went wrong; gone wrong; feel bad; feeling bad;
    feels bad; felt bad; lost consciousness; lost feeling; my back; lower back; upper back; back pain"""
# Words of these classes that mean nothing alone.
NOT_ALONE = """back; air; slow; lost; wrong; mixed; mixed up; stuck; thick; strange; funny; rubbish; falling; drop;
    drops; dropped; dropping; fallen; stiff; bent; hanging; slid; slipped; gone; went down; limp; twisted;
    open; cut; broken; split; tearing; rip; pop; knife; sharp; bugs; ants; static; electric; electricity;
    cotton wool; buzz; brow; smile; grin; hard to move; packed in; packed up; refuses; awful; rough; puff;
    football; melon; doubled; expanded; fluid; shiny; balloon; sausage; sausages; talk; talking; cant get;
    cant find; repeating; staring; wandering; blank; drunk; cant use; cant open; cant close; cant hold; not
    working; doesnt work; wont work; wont open; wont do; wont go; wont hold; blown up; asleep; sleepy; on
    the floor; staring into space; not moving"""

# A rule is a kind and its classes; the words of each must stand in one clause, in any order, near each other.
RULES = """
emergency | chest + hurt; chest + press; chest + odd; chest + numb; chest + indigestion; indigestion + jaw
emergency | heart + hurt; heart + press; jaw + hurt; jaw + numb; indigestion + throat; indigestion + limb
emergency | breath + short; inbreath + hurt; throat + swollen; throat + press; throat + numb; face + swollen
emergency | face + droops; face + numb; face + fails; face + odd; speech + slurs; speech + fails
emergency | sight + dims; sight + fails; head + sudden; head + awful; lips + colour; brings up + blood
emergency | limb + fails + sudden; limb + numb + sudden; onside + numb; onside + fails
emergency | other + gone over; other + muddled; other + off colour; other + slurs + speech
emergency | balance + lost + sudden
faint | heart + beats; room + spins; see + lights; sweat + cold; sweat + unwell; sweat + off colour; ears + ringing
faint | balance + lost
nerve | limb + numb
circulation | limb + colour; limb + cold
swelling | limb + swollen; calf + warm; calf + hard; limb + red + warm; muscle + hard + swollen; calf + red
limp | limb + fails
urine | urine + dark
urine | wees + dry; wees + odd
injury | limb + popped; trunk + popped; muscle + popped; skin + split
tight | band + bites
"""
