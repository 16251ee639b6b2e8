"""Real words one slip away from a word that matters (two from a long one): never mended into it.

"shop" is no "stop" and "gold" no "cold". Found by comparing `MENDED` of the lexicon with a general list of
English words; words so rare that they are likelier a slip ("stope") were left out. First come
small words of other languages: "ist" is no "isn't".
"""

REAL_WORDS = frozenset(
    """
    auch ist sont tant tres vont
    aces ached acing acres acting afoot ain ale ambiance ambulances angle angling anklet ant arches arching
    arcing ashes atop bale barns bathing beaching beading bedding beefing beeping bell bending
    berating berthing biddy bingeing binging blabbing bleaching bleakness bleating bleeping blending
    blessing blond blooding bloods bloom blub blues blur blush bold boot boozy boulder bracing breach
    breaching breading breadth breaking breathed breather breathers breathes breaths breathy breeding
    breezing bricking brightness brine brood buffy bungling buns burbs burnings burnt burping burps burrs
    burt burying cabbing caches caff cain cal cali camp cane cans canst canto capt cart cast cell cent
    champ chant cheat chess chests chesty clamp clod clue cod coed col colds cole collapses collared
    collated colt confine conscious continual continued continues continuum convince coot cord couch
    crabbing crackling cram crams crap creating creeping crest crimp crinkling crump curt dabbing dale
    dangling deafness deathless dell dent dinging dingle dint ditzy does doit dolt don dona dong dons donut
    doozy dort dost dot duelling duffy dumb dumbness dwelling dwellings earache eel eight ell emergence
    emergent facing fain fainter fall fee feed fees feint fella felling fells fight fill finagling
    finder finders finer firearm fleecing fleeing fleeting flint flood flue foes fold font food fool footy
    fort freaking freeing fretting fuel fueling fuelling gabbing gainful gale gaseous gelling giggling
    ginger gingers glue gold grabbing gracing greening greeting grist hale han handy hangs hank hanks hans
    harp hart headaches headcase heartache heeding heel hell highness hight hind hinging hoes holder hoot
    huffy hunt hunting hunts hurl hurling hurls hurtling hut imbalance inkling jabbing jangling jell
    jiggling jingle jingles jingling jingly kale kiddy kindling kingly kneed kneel knew kurt lacing lain
    land lands leading leering lending lighthearted lightness limiting linger lingers lizzy loot
    mangling meanness meekness mingle mingles mingling mold mont moot nabbing nearness neatness needing
    needled needless nell noes nub numbers och old omit omitting ont oozy pace pacing page paid pail paine
    paint painted pair pal paled pales pali pall palp palpitating pals pan pane pant pate pave pawn
    peel peeling pele picking pickling pile plain pleading pleasure pole positing pouch preaching preening
    presser pressured pressures pressurize presume pricing puff puffs purples pyle quelling racine racking
    raging rain raking ramp rand rant raping raring rating raving razing reaching realness reassure reeking
    reel reeling rightness ringer ringers ringling roes root saint sainted sale sand sands scabbing scant
    scold sealing seeding seedling seizures sell selling shard share shari shark sharpe sharps shelling
    shelving shilling shop should shouldered shouldst shudder sightless singeing singer singers
    singles singling singly sings sledding slings slop slurped smelling smelting smiting smolder
    smoulder sneezing snubbing sobbing sold solder soot sop sounder spain speeding spelling spellings
    spilling sprinkling spurred stabbings stabling stacking staffing staging staining staking stalking
    stalling stamping stapling staring starling starring starting starving stashing stating staving staying
    stealing steeling step sterling stilling stingy stinks stints stoke stomp stor stoup stow strike strings
    strobe strode stroked strokes strop strove stubbing subbing subconscious such swabbing swearing sweeping
    sweeting swellings swerving swilling swings swirling swop tabling taint tainted tale tangle tangles
    tangling tangoing tees tell thump tickling ties tightens tightest tights tiling tilling tinge tings
    tinkle tinkles tinkling tinting tizzy toed togs told tomes toms tones tonguing tons tontine toot tops
    toss totes tots tows toys tracing tramp treasure treating tricking trickling twinkling
    unconsciously unfreezing upwelling urns vain vale visions visiting voicing voiding voting vouch waist
    walling wand wands weakens weakest weaknesses weariness weeding welding welling wellness wetness while
    whine whist whit whited whiten whites whitey wiggling wight willing wingding winger wingers winging woes
    wold woody wooly wreath wrest wrinkling writ write writs yale yell yelling yurt zinger zingers zinging
    """.split()
)
