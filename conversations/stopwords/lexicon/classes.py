"""Parts of the body, what they can do wrong, and which pairs of the two are a sign: read in any order of the words.

A class is a line of words, with ";" between; what stands between two ";" may be several words. A rule names a kind
and the classes that must stand together in one clause. To add a way to say something, add a word to its class: every
rule that names the class reads it. British, American, Indian and African English, and how older people say it.
"""

PARTS = {
    "chest": """chest; breast; breasts; breastbone; sternum; rib; ribs; ribcage; rib cage; bosom; middle of me;
        middle of my body; centre of me; center of me; lungs; lung""",
    "heart": "heart; ticker; pulse; heartbeat; heartbeats; heartrate; heart rate; heart beat; heart beats",
    "breath": """lungful; lungfuls; lungfull; breath; breaths; breathe; breathing; breathes; air; oxygen; puff;
        inhale; inhaling; breathin; lung; lungs""",
    "inbreath": """breath; breathe; breathing; inhale; inhaling; breathe in; breathing in; deep breath; deep breaths;
        cough; coughing""",
    "face": """face; cheek; cheeks; mouth; lip; lips; smile; eyelid; eyelids; brow; grin; eyebrow; eyebrows; lower
        lip; corner of my mouth; corner of her mouth; corner of his mouth""",
    "lips": "lip; lips; tongue; gums; mouth; face",
    "throat": "throat; tongue; gullet; windpipe; airway; airways",
    "jaw": "jaw; jaws; jawbone",
    "speech": """speech; speak; speaking; speaks; talk; talking; talks; words; word; sentence; sentences; voice""",
    "pupil": "pupil; pupils",
    "unequal": """bigger; smaller; larger; different; uneven; unequal; wide; huge; blown; tiny; dilated; odd; weird;
        strange; funny; wrong; pinprick""",
    "sight": "eye; eyes; eyesight; sight; vision; eye sight",
    "head": "head; skull; brain; temple; temples; headache; headaches; migraine",
    "limb": """hand; hands; finger; fingers; fingertip; fingertips; thumb; thumbs; pinky; pinkie; palm; palms;
        nail; nails; nailbed; nailbeds; knuckle; knuckles; wrist; wrists; arm; arms; forearm; forearms;
        elbow; elbows; bicep; biceps; tricep; triceps; leg; legs; thigh; thighs; quad; quads; hamstring;
        hamstrings; hammy; calf; calves; calfs; shin; shins; foot; feet; toe; toes; ankle; ankles; knee;
        knees; limb; limbs; heel; heels; sole; soles; instep; kneecap; kneecaps; lower leg; upper arm;
        extremities""",
    "calf": """calf; calves; calfs; shin; shins; lower leg; back of leg; back of my leg; back of the leg; behind my
        knee""",
    "muscle": """muscle; muscles; bicep; biceps; tricep; triceps; quad; quads; hamstring; hamstrings; calf; calves;
        thigh; thighs""",
    "trunk": """back; neck; shoulder; shoulders; shoulderblade; shoulderblades; hip; hips; groin; stomach; belly;
        tummy; gut; guts; abdomen; flank; armpit; collarbone; spine; buttock; buttocks; bum; glute; glutes;
        waist; joint; joints; tendon; ligament; bone; bones; nerve; nerves; vein; veins; throat; nose; ear;
        ears; bladder; kidney; kidneys; body; muscle; muscles; skin""",
    "urine": """urine; wee; pee; piss; peeing; weeing; peed; urinate; urinated; urinating; passing water; pass
        water; passed water; passing urine; toilet; loo; toilet bowl; waterworks; bowl; my water; my waters;
        the water i pass""",
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
    feels bad; felt bad; lost consciousness; lost feeling; my back; lower back; upper back; back pain;
    puffing; panting; wheezing; warfarin; blood thinner; blood thinners; nosebleed; pupil; pupils; my water;
    call someone; call somebody; forgot where; couldnt find my words; shivers; chills; passed out; passing
    out; swaying; choking; gasping; sweating like; sweating and; cold sweat; clammy; zonked; spaced out; out
    of it; floaty; out of sorts; under the weather; lousy; rotten; not myself; knackered and; lightheaded"""
# Words of these classes that mean nothing alone.
NOT_ALONE = """back; air; slow; lost; wrong; mixed; mixed up; stuck; thick; strange; funny; rubbish; falling; drop;
    drops; dropped; dropping; fallen; stiff; bent; hanging; slid; slipped; gone; went down; limp; twisted;
    open; cut; broken; split; tearing; rip; pop; knife; sharp; bugs; ants; static; electric; electricity;
    cotton wool; buzz; brow; smile; grin; hard to move; packed in; packed up; refuses; awful; rough; puff;
    football; melon; doubled; expanded; fluid; shiny; balloon; sausage; sausages; talk; talking; cant get;
    cant find; repeating; staring; wandering; blank; drunk; cant use; cant open; cant close; cant hold; not
    working; doesnt work; wont work; wont open; wont do; wont go; wont hold; blown up; asleep; sleepy; on
    the floor; staring into space; not moving; cant do; cant press; cant push; cant pull; cant turn; cant
    carry; cant lift; cant hold up; cant think; missing; sleeping; woke up; miss; misses; missed; lump;
    lumpy"""

# A rule is a kind and its classes; the words of each must stand in one clause, in any order, near each other.
RULES = """
emergency | chest + hurt; chest + press; chest + odd; chest + numb; chest + indigestion; indigestion + jaw
emergency | heart + hurt; heart + press; jaw + hurt; jaw + numb; indigestion + throat; indigestion + limb
emergency | breath + short; inbreath + hurt; throat + swollen; throat + press; throat + numb; face + swollen
emergency | face + droops; face + numb; face + fails; face + odd; speech + slurs; speech + fails
emergency | sight + dims; sight + fails; head + sudden; head + awful; lips + colour; brings up + blood
emergency | limb + fails + sudden; limb + numb + sudden; onside + numb; onside + fails
emergency | other + gone over; other + muddled; other + off colour; other + slurs + speech
emergency | balance + lost + sudden; on me; came to + laid out; pupil + unequal; elephant
faint | heart + beats; chest + beats; feels + faintly
faint | room + spins; see + lights; sweat + cold; sweat + unwell; sweat + off colour; ears + ringing
faint | balance + lost
nerve | limb + numb
circulation | limb + colour; limb + cold
swelling | limb + swollen; calf + warm; calf + hard; limb + red + warm; muscle + hard + swollen; calf + red
limp | limb + fails; muscle + fails
urine | urine + dark
urine | wees + dry; wees + odd
hurts | limb + hurt; trunk + hurt; muscle + hurt; head + hurt
injury | bleeds; limb + popped; trunk + popped; muscle + popped; skin + split
tight | band + bites
"""
