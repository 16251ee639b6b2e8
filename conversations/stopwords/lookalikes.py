"""Real words one slip away from a word that matters (two from a long one): never mended into it.

"shop" is no "stop" and "gold" no "cold". Found by comparing `MENDED` of the lexicon with a general list of
English words; words so rare that they are likelier a slip ("stope") were left out. First come
small words of other languages: "ist" is no "isn't".
"""

REAL_WORDS = frozenset(
    """
    auch ist sont tant tres vont
    aces ached acing acres acting afoot ain ale ambiance ambulances angle angling anklet ant arches arching
    arcing ashes atop bale barns bathing beaching beading bedding beefing beeping bell bending berating
    berthing biddy bingeing binging blabbing bleaching bleakness bleating bleeping blending blessing blond
    blooding bloods bloom blub blues blush bold boot boozy boulder bracing breach breaching breading breadth
    breaking breathed breather breathers breathy breeding breezing bricking brightness brine brood buffy
    bungling buns burbs burnings burping burps burrs burt burying cabbing caches caff cain cal cali camp cane
    cans canst canto capt cart cast cell cent champ chant cheat chess chests chesty clod clue cod coed col
    colds cole collapses collared collated colt confine conscious continual continued continues continuum
    convince coot cord couch crabbing crackling cram crams crap creating creeping crest crimp crinkling crump
    curt dabbing dale dangling deafness deathless dell dent dinging dingle dint ditzy does doit dolt don dona
    dong dons donut doozy dort dost dot duelling duffy dumb dumbness dwelling dwellings earache eel eight ell
    emergence emergent facing fain fainter fee feed fees feint fella felling fells fill finagling finder
    finders finer firearm fleecing fleeing fleeting flint flood flue foes fold font food fool footy fort
    freaking freeing fretting fuel fueling fuelling gabbing gainful gale gaseous gelling giggling ginger
    gingers glue gold grabbing gracing greening greeting grist hale han handy hangs hank hanks hans harp hart
    headcase heartache heeding hell highness hight hind hinging hoes holder hoot huffy hunt hunting hunts hurl
    hurling hurls hurtling hut imbalance inkling jabbing jangling jell jiggling jingle jingles jingling jingly
    kale kiddy kindling kingly kneed kneel knew kurt lacing lain land lands leading leering lending
    lighthearted lightness limiting linger lingers lizzy loot mangling meanness meekness mingle mingles
    mingling mold mont moot nabbing nearness neatness needing needled needless nell noes nub numbers och omit
    omitting ont oozy pace pacing page paid pail paine paint painted pair pal paled pales pali pall palp pals
    pan pane pant pate pave pawn peel pele picking pickling pile plain pleading pleasure pole positing pouch
    preaching preening presser pressured pressures pressurize presume pricing puffs purples pyle quelling
    racine racking raging rain raking ramp rand rant raping raring rating raving razing realness reassure
    reeking reel rightness ringer ringers ringling roes root saint sainted sale sand sands scabbing scant
    scold sealing seeding seedling seizures sell selling shard share shari shark sharpe sharps shelling
    shelving shilling shop should shouldered shouldst shudder sightless singeing singer singers singles
    singling singly sings sledding slings slop slurped smelling smelting smiting smolder smoulder sneezing
    snubbing sobbing sold solder soot sop sounder spain speeding spelling spellings spilling sprinkling
    spurred stabbings stabling stacking staffing staging staining staking stalking stalling stamping stapling
    starling starring starting starving stashing stating staving staying stealing steeling step sterling
    stilling stingy stinks stints stoke stomp stor stoup stow strike strings strobe strode stroked strokes
    strop strove stubbing subbing subconscious such swabbing swearing sweeping sweeting swellings swerving
    swilling swings swirling swop tabling taint tainted tale tangle tangles tangling tangoing tees tickling
    ties tightest tights tiling tilling tinge tings tinkle tinkles tinkling tinting tizzy toed togs told tomes
    toms tones tonguing tons tontine toot tops toss totes tots tows toys tracing tramp treasure treating
    tricking trickling twinkling unconsciously unfreezing upwelling urns vain vale visions visiting voicing
    voiding voting vouch walling wand wands weakens weakest weaknesses weariness weeding welding welling
    wellness wetness while whine whist whit whited whiten whites whitey wiggling wight willing wingding winger
    wingers winging woes wold wooly wreath wrest wrinkling writ write writs yale yell yelling yurt zinger
    zingers zinging
    """.split()
)
