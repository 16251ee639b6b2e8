"""What a body can do wrong, and what goes with it: the classes of words that `classes.py` pairs with its parts."""

SIGNS = {
    "hurt": """hurt; hurts; hurting; hurted; pain; pains; paining; pained; painful; ache; aches; aching;
        achey; achy; stab; stabs; stabbing; burn; burns; burning; burnt; sting; stings; stinging; throb;
        throbs; throbbing; shooting; agony; excruciating; unbearable; tender; cramp; cramps; cramping;
        spasm; spasms; knife; sharp; on fire; catches; discomfort; uncomfortable; grinding; gnawing; like an
        iron bar; iron bar across; like an iron band; hot poker; like a dagger; like a skewer""",
    "press": """pressure; pressing; presses; pressed; tight; tightness; tightening; tightened; tightens;
        squeeze; squeezes; squeezing; squeezed; crush; crushes; crushing; crushed; heavy; heaviness; vice;
        vise; clamp; clamped; gripping; gripped; fist; elephant; belt; constricted; constricting; fullness;
        brick; bricks; concrete; sitting on; standing on; closing; closing in; weight on; a weight; weighed;
        bursting; being sat on; stood on; bearhug; bear hug; bowling ball; an anvil; a boulder; paving slab;
        parked on; ton of bricks; iron bar across; like an iron bar""",
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
        wool; not feel; cant tell; after the dentist; at the dentist; like novocaine; belongs to someone
        else; belongs to somebody else; belongs to another; isnt mine; not mine; not my own; someone elses;
        somebody elses; anaesthetised; anesthetized; fuzzy; furry; frozen off; cant sense; stopped feeling;
        sleeping; woke up; pricks; needles; tickly; tickling; prickled; jangling; humming; like it is not
        there; not there; isnt there; missing; turned to wood; turned to stone; turned to rubber; gone to
        wood""",
    "colour": """blue; bluish; blueish; bluey; purple; purplish; violet; grey; gray; greyish; white;
        whitish; pale; paler; pasty; ashen; ashy; waxy; dusky; blackish; mottled; blotchy; marbled;
        bloodless; discoloured; discolored; no colour; no color; funny colour; strange colour; wrong colour;
        odd colour; lost colour; lost its colour; ghostly; gone black; going black; turned black; turning
        black; plum; corpse; dead white; navy; indigo; no blood; colourless; colorless; blanched; lost all
        colour; lost all color; losing colour; losing color; milky; chalky; chalk; marble; marbling; patchy;
        spotty; lilac; reddish blue; deep red; dark red; brownish; greenish; yellowish; weird colour; weird
        color; changed colour; changed color; different colour; different color; like blueberries; like
        plums; smurf; smurfs; like a snowman; like a ghost; like ghosts""",
    "cold": "cold; icy; ice; iced; freezing; frozen; chilly; stone cold; colder; fridge; block of ice",
    "swollen": """massive compared; huge compared; enormous compared; bigger compared; fatter compared; swollen;
        swelling; swell; swells; swelled; swole up; puffy; puffed up; puffing up; ballooned; ballooning;
        balloon; bloated; engorged; fatter; blown up; blowing up; blew up; twice the size; double the size;
        doubled; sausage; sausages; football; melon; tree trunk; tree trunks; shiny; filled up; full of fluid;
        fluid; filling up; expanded; fat; bigger than the other; bigger than my other; thicker than the other;
        larger than the other; tight as a drum; like a drum; stretched; marshmallow; water balloon; michelin;
        tube; log; tripled; puff up; puffs up; swole; bulging; bulge; bulges; lump; lumps; lumpy""",
    "warm": "hot; warm; hotter; warmer; burning; heat; on fire; boiling",
    "red": "red; reddish; redder; scarlet; inflamed",
    "hard": "rock; rocks; stone; solid; woody; rigid; hard; like wood; like a board",
    "fails": """limp; floppy; lifeless; useless; paralysed; paralyzed; powerless; feeble; gives way; gave
        way; giving way; given way; wont move; wont work; wont lift; wont grip; wont bend; wont straighten;
        wont close; wont open; wont do; wont respond; wont listen; wont obey; wont hold; wont go; doesnt
        move; doesnt work; doesnt lift; doesnt respond; doesnt listen; doesnt obey; doesnt do; cant move;
        cant lift; cant raise; cant grip; cant hold; cant use; cant open; cant close; cant control; cant
        wiggle; cant stand on; couldnt move; couldnt lift; couldnt raise; couldnt grip; couldnt hold; not
        working; not moving; not responding; stopped working; flops; flopping; flopped; drags; dragging;
        dragged; buckled; buckles; buckling; no strength; no power; lost strength; lost power; lost all
        strength; lost all power; keep dropping; keeps dropping; packed up; packed in; conked out; unable to
        move; unable to lift; hard to move; hard to lift; wont come up; gone limp; not lifting; not obeying;
        refuses; refusing; wont cooperate; without strength; lost control; lost grip; collapsing under; cant
        do; cant hold up; cant keep hold; cant carry; cant lift up; got no strength; cant clench; cant
        squeeze; cant press; cant push; cant pull; cant turn; cant twist; cant straighten out; folds under
        me; folding under me; folded under me; collapses under me; goes from under me; wont hold me; wont
        carry me; wont join in; wont take my weight""",
    "beats": """racing; races; race; raced; flutter; fluttering; flutters; fluttery; skip; skips; skipping;
        skipped; thump; thumping; thumps; thudding; pound; pounding; pounds; hammering; gallop; galloping;
        irregular; erratic; jumping; jumps; flipping; flip; flips; flops; somersaults; clappers; bouncing;
        all over the place; missing beats; missing a beat; wont settle; wont slow; wont calm; out of rhythm;
        too fast; so fast; very fast; really fast; going mad; going crazy; going nuts; going wild; running
        wild; palpitating; uneven; like a drum; like a train; out of my chest; like mad; like crazy;
        drumming; banging; leaping; wont stop racing; stops and starts; missed; misses; miss; stutter;
        stuttering; butterflies; doing somersaults; fluttered; palpitations; palpitation; throbbing in my
        ears; going ten to the dozen; ten to the dozen; nineteen to the dozen; wont slow down; twitching;
        quivering; juddering; stopping and starting; going haywire; haywire; bonkers; drum solo; missing
        every; missing one; missing some; skips every; stops every""",
    "short": """short; shortage; cant; couldnt; hardly; barely; struggle; struggling; struggles; fight; fighting;
        gasp; gasping; difficult; difficulty; trouble; losing; run out; ran out; running out; runs out;
        unable; laboured; labored; shallow; not enough; isnt enough; never enough; wont come; not coming;
        stuck; suffocating; starved; battling; hard to; not getting; fast and shallow; rapid; panting; not
        able; not reaching; doesnt go; need; wanting; scarce; fill; filling; cant fill; wont fill; half;
        empty; nothing goes in; out of puff; out of air""",
    "slurs": """slurred; slurry; slurring; slurs; slur; jumbled; garbled; garbling; gibberish; mumbling;
        mumbled; muddled; nonsense; rubbish; not making sense; not making any sense; makes no sense; making
        no sense; doesnt make sense; backwards; like drunk; drunk; mixed; mixing up; mixed up; tangled; wont
        form; wont come out; cant get; cant find; not coming out; wrong; stuck; cant understand; cant speak;
        cant talk; strange; funny; thick; lisp; lisping; stammering; babbling; slow; lost; cant put; cant
        say; cant remember; lost for; forgot how; like id had; like a drunk""",
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
    "spins": """spin; spins; spinning; spun; reeling; whirling; swimming; tilting; tilts; tilted; turning;
        swaying; rocking; rotating; moving; going round; going around; wobbling; rolling; sideways; upside
        down; cotton wooly; cottonwooly; cotton woolly; went woolly; gone woolly; swimmy""",
    "sweat": "sweat; sweats; sweating; sweaty; clammy; sweated; perspiring; drenched",
    "sudden": """sudden; suddenly; abrupt; abruptly; all of a sudden; out of nowhere; out of the blue;
        thunderclap; in an instant; just went; from nowhere; in a second; in one go; from one second to the
        next; from one moment to the next; just like that; out the blue; instantly; at once; like lightning;
        lightning bolt; bolt of lightning; like a gunshot; like a light switch""",
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
        strange; talking weird; talking strangely; talking nonsense; cant get; cant find; forgot where;
        forgotten where; dont know where; cant remember where; not know where; lost track of where; no idea
        where; cant think; cant think straight; foggy; dazed""",
    "off colour": """grey; gray; white; pale; blue; ashen; pasty; clammy; sweaty; sweating; waxy; purple; green; yellow""",
    "unwell": """sick; ill; nauseous; nausea; queasy; dizzy; faint; light headed; lightheaded; woozy; unwell; poorly;
        rotten; awful; rough; giddy; wobbly; vomiting; nauseated; sickly""",
    "popped": """popped; pop; pops; popping; snapped; snap; tore; torn; ripped; rip; cracked; crack; twang;
        pinged; crunched; crunch; ping; bends the wrong way; bent the wrong way; out of its socket; out of
        joint; misshapen; deformed""",
    "split": """split; splitting; broken; torn; tearing; tore; cut; open; peeling; blistered; blister; blisters;
        raw; bleeding; bruised; bruises""",
    "bites": """biting; bites; bit; strangling; strangles; choking; throttling; digging; digs; cutting; cuts;
        garrotting; tourniquet""",
    "ringing": "ringing; ring; buzzing; whooshing; roaring; muffled; blocked; humming; whistling; pulsing",
    "ears": "ear; ears",
    "balance": """balance; walk straight; stand straight; walk in a straight line; upright; straight line; veering;
        veer; steady; feet""",
    "lost": "lost; losing; cant; couldnt; no; wont; cant keep; off; keep; hardly; barely",
    "came to": """found myself; woke up; wake up; woke; waking; came round; came to; come round; coming round; next
        thing""",
    "laid out": """on the floor; on the ground; on the carpet; on the tiles; on the bathroom floor; on the kitchen
        floor; in a heap""",
    "elephant": "elephant; elephants",
    "on me": """sitting on me; sat on me; crushing me; pressing on me; pressing me; standing on me; stood on me;
        lying on me; kneeling on me; squashing me; squeezing me; sits on me; pressing down on me; weighing
        on me; weighing me down""",
    "bleeds": """nosebleed; nosebleeds; nose bleed; nose bleeds; haemorrhage; hemorrhage; haemorrhaging; pouring
        blood; blood everywhere; dripping blood""",
    "faintly": "faint; dizzy; woozy; giddy; lightheaded; swimmy; floaty; wobbly; spaced out; shaky and sick",
    "feels": """feel; feeling; felt; feels; getting; come over; came over; coming over; going; turned; gone; went""",
    "onside": "left side; right side; one side; half my; half of; whole left; whole right",
}
