/** Cells and pack (A), battery management (B), high-voltage path (C), insulation (D): id | harm | stages | caught by | cause | effect. */
export const PACK_AND_HIGH_VOLTAGE = `
A1 | S3 | pack, prove | rule, test | lithium-ion cells are charged below freezing | metallic lithium plates out; capacity goes, later a short inside the cell
A2 | S3 | pack, prove | rule, test | the charger does not listen to the BMS and is not set to the pack’s full voltage | it charges past full; fire in a parked car
A3 | S3 | pack, prove | rule, test | a BMS is fitted but its outputs act on nothing | it sees the fault and nobody stops the current
A4 | S2 | pack, prove | rule, test | the car is driven on although one cell is empty | that cell reverses and dies
A5 | S2 | pack, signals, service | rule, test | DC-DC or BMS stays on a parked pack | every cell sinks to nothing over weeks
A6 | S3 | pack, high voltage | rule, drawing | one cell of a parallel group shorts | neighbours, then parallel strings, feed the fault
A7 | S3 | build, prove | test | a nut on a terminal is left loose | the post melts and arcs at every bump
A8 | S2 | build, prove | test | oxide, grease or a washer lies between busbar and terminal | the joint runs hot
A9 | S2 | pack | rule | modules of different age or charge are put in series | the weakest meets its limits first; range halves
A10 | S2 | fit, build | rule, drawing | pouch or prismatic cells are held without the compression they need | they swell; the box cracks
A11 | S3 | build | test, drawing | a tool, washer, swarf or long screw reaches live parts in the box | arc, cell venting
A12 | S3 | pack, service | rule, test | salvaged modules short inside or outside, a day after charging, unseen | fire in a parked car
A13 | S3 | fit | rule | the box hangs on thin sheet or a few small bolts | it tears loose in a crash
A14 | S3 | fit | rule | the pack is the lowest point, or lies where the car crushes | ground strike or intrusion into cells
A15 | S3 | fit, build | rule, test | gas has no way from the box to the outside, or the box opens to the cabin | smoke and toxic gas among the occupants
A16 | S2 | pack, service | rule, drawing | the pack stands full in a hot garage for weeks | it ages fast
B1 | S2 | signals, build | test | the tap loom is reversed or shifted by a turned module | the BMS is destroyed; voltages look right but for their sign
B2 | S2 | build | test | taps are plugged before the negative reference, or with charger or load on | the whole string stands across one input
B3 | S3 | high voltage, build | drawing | a tap wire without a fuse chafes through | the loom burns along its length
B4 | S2 | build, prove | test | two tap wires are swapped | one cell reads high, its neighbour low; balancing drains the wrong one
B5 | S2 | signals, prove | test, drawing | the current sensor sits backwards or reads an offset | counted charge runs the wrong way
B6 | S1 | pack | rule | some modules feed their own monitor boards and others do not | they drift apart at rest
B7 | S2 | signals, prove | drawing, test | BMS supply or ground is shared with a noisy load | it resets; contactors drop out
B8 | S2 | pack, signals | rule, test | charge is read from voltage alone on cells with a flat curve | the gauge falls to empty at once
C1 | S2 | high voltage, prove | rule, test | precharge is missing or too short | the inrush welds the contactor or kills capacitors
C2 | S2 | high voltage, prove | rule, test | precharge is tried again and again | its resistor burns open, and the next closing has none
C3 | S3 | high voltage, prove | rule, drawing, test | a main contactor welds and nobody notices | the bus stays live with the key off
C4 | S3 | high voltage | drawing | a contactor with polarity is fitted the wrong way round | it cannot break its load and bursts
C5 | S2 | high voltage, prove | drawing, test | a coil has no suppression, or a plain diode | it opens slowly, chatters or burns its driver
C6 | S3 | high voltage | rule | a fuse is rated for AC or for too little DC | its arc stays alive
C7 | S3 | high voltage | rule | a fuse is chosen by the motor’s peak alone | the cable becomes the weakest part
C8 | S3 | high voltage | rule, drawing | a second box has no fuse of its own | a short in the cable between has no protection
C9 | S3 | fit, high voltage, service | rule, test | cable lies on an edge, an exhaust, a hinge or a wheel | it chafes through: fault to the body, or an arc
C10 | S2 | build, prove | test | a lug is crimped with the wrong die or a short strip | it runs hot
C11 | S3 | high voltage, prove | drawing, test | a connector is not latched and its interlock is bridged | it parts under load with an arc
C12 | S2 | build, prove | test | polarity is swapped at inverter or charger | destroyed at once
C13 | S3 | fit, high voltage | rule, test | the disconnect is out of reach of driver and rescuers | nobody can cut the power
C14 | S3 | build | test | somebody works on a live pack with a ring or bare tool | shock, burn
C15 | S3 | high voltage, prove | rule, test | capacitors stay charged after switching off | shock at an opened inverter
C16 | S2 | high voltage, signals | drawing | contactors share a feed with fans and pumps | one blown fuse opens the high voltage at speed
D1 | S3 | fit, prove | rule, drawing, test | rain stands in a corner of the box between cell and wall | a fault to the body that comes with wet weather
D2 | S2 | service | test | acid mist, dust or grime lies on terminals | leakage trips the residual-current device
D3 | S2 | fit, prove | rule, drawing, test | a sealed box takes in damp and condenses it | insulation sinks at dawn and is back by noon
D4 | S3 | build, prove | test | a conductive sealant is used around live parts | a short to the body
D5 | S3 | thermal, prove | test | coolant leaks inside inverter, charger or drive unit | leakage current, later failure
D6 | S3 | signals, prove | drawing, test | the first fault to the body is ignored because the car still runs | the second closes the circuit through body or person
D7 | S2 | build | test, drawing | a sense wire or screen strand is pinched under the lid | a fault that comes and goes
`
