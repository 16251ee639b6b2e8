"""Real words one slip away from a word that matters (two from a long one): never mended into it.

"shop" is no "stop" and "gold" no "cold". Found by comparing `MENDED` of the lexicon with a general list of
English words; words so rare that they are likelier a slip ("stope") were left out. First come
small words of other languages: "ist" is no "isn't".
"""

REAL_WORDS = frozenset(
    """
    auch ist sont tant tres vont blaue blauen blauer blaues gurt gurte
    abounding aces ached acing acmes acres acting afoot ain ale ambiance ambulances angle angling anklet ant arches arching arcing ashes
    ashing atop backlog backstabbing bale balloted barns bathing bawling beaching beading bedding beefing beeping bell belling bending
    berating berthing biddy bight bingeing binging binning blabbing bleaching bleakness bleating bleeping blending blessing blond
    blooding bloods bloom blub blued blueing bluenose blues blurted blurting blush blushing blustering bold bonding boot boozy bottled
    boulder bounding bracing brawling breach breaching breading breadth breaking breasting breathed breather breathers breathier
    breathiest breathlessly breathy breeding breezing bricking brightness brine broaching brood brooding brooked brooking brushing buffy
    bungling buns burbs burgs burks burnings burping burps burred burring burrs burs burt burying bushing buttering cabbing cabling
    caches caching caff cain cal cali calif calk camp cane cans canst canto cants capt caroling cart cashing cast causing cawing cell
    censused cent chammy champ chant cheat cheating cheeking cheeping cheering cheesing chess chests chesty chinning clashing clattering
    clawing clod clue clumped clustering cluttering coaling cod coed col colds cole collapses collared collated colo cols colt conduced
    confessed confided confine confined confuse confusedly confuser confusers confuses confute confuted confutes conjured conscious
    consciousnesses consed consumed continua continual continued continues continuum contuse contused contuses convince convulsed cooked
    cooping coot cord couch couching cowling crabbing cracking crackling cradling crafting cram cramming crams craning cranking crap
    crapping crashing crating craving crazing creating creeping crest cresting crewing cricking crimp crinkling crisping croaked crocked
    crookes crooking crooned crooning cropping crouching crowding crowing crowning cruising crumbing crump crunching crusading crusting
    cuddled cunt cursing curt cussing dabbing dale dangling deafness dearness deathless deeding dell dent digestion dinginess dinging
    dingle dinning dint dirtiness ditzy dizzies dizziest doit dolt don dona dong dons donut dooming doozy doping dort dost dot dowelling
    draping drawing drawling droning droopier droppings drowning drowsing duelling duffy dumb dumbness dummy dwelled dwelling dwellings
    earache eel eight ell emergence emergent estranging expounding facing fain fainter fall fathead fee feed fees feint feinted fella
    felling fells fettering finagling finder finders finer firearm fizzling flattening flattering fleecing fleeing fleeting flint flippy
    flood flue flurrying flushing flustering foes fold font foo food fool foots footy fort founding foundling freaking freckling freeing
    fretting frittering frizzing fuddled fuel fueling fuelling funding furring fuzziness fuzzing gabbing gabbled gabled gainful gale
    gambled gangling gaping garbed garble garbles gargled gaseous gashing gassing gelling gibbering gibbers giggling ginger gingers
    ginning glittering glue gold grabbing gracing grasping greening greeting grist grooming grooving groping grounding grouping growling
    gummy gushing guttering hale han handy hangs hank hanks hans harp hart harts headcase hears hearst heartache hearth heartthrob
    heartthrobs hearty heating heeding heeling hell highness hight hind hinds hinging hoes holder hooping hoot hotness hounding huddled
    huffy hunt hunting hunts hurd hurl hurling hurls hurst hurtling hushing hut huts illinois imbalance impounding indignation
    indirection infused ingestion inkling inning int jabbing jain jell jelling jewelling jiggling jingle jingles jingling jingly
    jouncing kale kant kiddy kindling kingly klee kneed kneel knelling knew kurt lacing lain land lands leading leanness leering lending
    lettering lighthearted lightness limiting linger lingers littering lizzy logoff looping loot lopsidedly lounging lumped luring
    lurking macing mangling meanness meddled meekness middy mightiness mingle mingles mingling mold mont moot mottle mottles mounding
    mounting muddied muddle muddles murine muscled mushing muttering nabbing nauseam nearness neatness needing needled needless nell
    noes nub numbers numbest numbskull och omit omitting onrushing ont oozy opining pace pacing page paid pail pailful paine paint
    painted pair pal paled pales paley pali pall palliation palp palpation pals pan pane panning pant paralyses paralysis paralyze
    paralyzes parlayed pate pave pawn peale peel pele pending penning picking pickling pile pining pinking pinning plain pleading
    pleasure pleating plumped plunging plunking podding pointing pole pomading pooping positing pouch pouching pouncing pouting prawning
    preaching preakness preening presser pressured pressures pressurize presume priceline pricing pricklier proofing propping prowling
    pruning pudding puddled punning punting purpler purples purring pushing puttering pyle queened queening queered queering quelling
    racine racking raging railing rain raking ramp rand rankle rant raping raring rasping rating raving razing realness reassure reefing
    reeking reel reeving responsive ricing ricking rightness ringer ringers ringling robbing roes romping roofing rooked rooking rooming
    root rooting roping roughneck rounding rowelling rowling rummy rushing rusting saint sainted sale sand sands sating scabbing
    scanning scant scarring scenting schelling scold scooping scrawling sculling scurrying sealing seaming searing seating sedating
    seeding seedling seizures sell selling setting sexting shard share shari shark sharpe sharpness sharps shearing sheathing sheering
    sheeting shelled shelling shelving shilling shingling shining shinning shinnying shirring shop shortens shortest should shouldered
    shouldst showiness shrugging shudder shunning shushing shuttering sightless signing singeing singer singers singles singling singly
    sings sinking sinning skating skinning slabbing slating sledding sleeking sleepyhead sleeting slightness slinging slings slinking
    slop sloppy slue slugging sluicing sluing slummed slumming slurped slurping smartness smearing smelled smelling smelting smiting
    smolder smoulder smoulders smuggling sneaking sneezed sneezing snooping snubbing snuggling sobbing softness sold solder soot sop
    sounder sounding soundings sourcing souring spain spangling spanking spanning sparring spawning spearing speeding spelled spelling
    spellings spending spicing spieling spiking spilling spindling spiting splinting splurging spluttering sponging spooning sprawling
    springing sprinkling sprinting spurning spurred spurring spurting sputtering squaring squeaked squeaking squealed squealing squeegee
    squeegeed squeezer squeezers squiring stabbings stabling stacking staffing staging staining staking staling stalking stalling
    stamping stapling starling starring starving stashing stating staving staying stealing steaming steeling step sterling stilling
    stingy stinking stinks stinting stints stirring stoke stomachs stomp stoop stooping stor stoup stoutness stow straddling straggling
    stranding strike stringing strings strobe strode stroked strokes strop strove stubbing stumped stunning subbing subconscious such
    sunning surfing surging swabbing swathing swatting swearing sweatier sweeping sweeting sweller swellings swerving swilled swilling
    swinging swings swirling swivelling swooping swop tabbing tabling tabuing taint tainted tale tammy tangle tangles tangling tangoing
    tees tharp thinning threat throats throaty thronging ties tightest tights tiling tilling timmy tinge tingeing tinges tinging
    tinglings tings tinkle tinkles tinkling tinning tinseling tinting tippling titling tizzy toed toggling togs tokes told tomes tommy
    toms tones tongued tongues tonguing tons tontine toot tops topside topsides tors toss totes tots towelling tows toys tracing
    trailing tramp trashing trawling treasure treating treeing tricking trickling tromping trooping trouping truckling trussing trusting
    tues tweaking tweeting twingeing twinging twinkling twinning unconsciously unconsciousness unfreezing unpinning upwelling urns
    uttering vain vale visions visiting voicing voiding voting vouch waite wale walling wand wands wangling warbled weakens weakest
    weaknesses weaning weariness wearing weaving weeding weeping welding welled welling wellness welting wetness wetting wheedling
    wheeling wheezier whelping whetting while whine whist whit whited whiten whites whitey whits whizzing whooping wiggling wight
    willing wingding winger wingers winging winning wist woes wold wooly wounding wrangling wreath wreathe wreathing wrest wriest
    wrinkling writ write writs yale yell yelling yummy yurt zinger zingers zinging
    """.split()
)
