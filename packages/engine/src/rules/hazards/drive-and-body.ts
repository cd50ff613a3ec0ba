/** Driveline (E) to people and money (N): id | harm | stages | caught by | cause | effect. */
export const DRIVE_AND_BODY = `
E1 | S2 | driveline, prove | rule, test | a plain bore with key and set screw takes reversing torque | the key works out; drive is lost pulling away
E2 | S2 | driveline, prove | test | a wobbling coupler is accepted because it only hums | the shaft splits within months
E3 | S2 | driveline, build | test | motor and gearbox are out of line | bearings, then shafts, fail
E4 | S2 | driveline, build | rule, test | the hub is dry, short in engagement or wrongly spaced | squeal, then a standstill
E5 | S2 | driveline, build | rule, test | the spline into the transaxle is short, soft or free to slide | it strips; no drive
E6 | S1 | driveline | drawing | the bolt pattern was taken from the wrong face | the plate has to be drilled again
E7 | S2 | driveline, prove | rule, test | mounts were made for weight, not for torque | the motor turns on them and tears hoses and cables
E8 | S2 | drive, driveline | rule, test | a drive unit turns against its sense with nobody asking about oil | gears and bearings run dry
E9 | S2 | driveline, prove | rule, test | a half-shaft is bent or slid beyond its joint at full droop | the joint pops or wears
E10 | S2 | build, prove | test | the coolant seal or bearings of a used drive unit are worn | coolant in the motor, howling bearings
E11 | S2 | drive, driveline | rule, test | the propshaft turns faster than it ever did | it whips
E12 | S2 | driveline, build | test | oil level and breather are forgotten after the unit was tilted | leaks and heat
F1 | S3 | signals, prove | test | position-sensor offset or phase order is wrong | jerk, high current without torque, wrong direction
F2 | S2 | signals, prove | test | sensor channels are swapped together with phases | it runs, but speed has the wrong sign
F3 | S3 | signals, prove | drawing, test | a worn pedal potentiometer skips | nothing, then full torque
F4 | S3 | signals, prove | drawing, test | the pedal sensor loses its ground | its output rises to a full request
F5 | S2 | prove | test | pedal zero was learned with a mat in the way, or drifts | the car creeps
F6 | S3 | signals, prove | drawing, test | the encoder or its cable is disturbed | the motor turns by itself
F7 | S3 | signals, prove | rule, test | the node that commands torque dies | the inverter keeps the last request
F8 | S3 | signals, prove | rule, test | a change of direction is accepted while rolling | torque reverses
F9 | S1 | signals, build | drawing | firmware and parameters of several ages are mixed | drop-outs nobody can explain
F10 | S2 | drive, prove | rule, test | bench limits of current or voltage stay in, or were never set | weak car, or damaged parts
G1 | S3 | signals, prove | rule, test | the DC-DC dies unnoticed | 12 V sinks, lights dim, high voltage opens on the road
G2 | S2 | signals, prove | rule, test | the DC-DC is too small for lamps and pump together | it fails
G3 | S2 | pack, signals | rule | the DC-DC’s input is rated below the pack’s full voltage | its capacitors burst into a sealed box
G4 | S1 | signals | drawing | lamps were left on | the car is dead, and somebody reaches into the high-voltage box
G5 | S1 | signals, prove | test | DC-DC outputs draw current when off | the 12 V battery is flat in days
G6 | S2 | papers | drawing | the 12 V supply is bridged from part of the pack in the dark | wrong pole; contactor and fuse lost
H1 | S3 | pack, papers | rule, test | it is charged through a household lead or adaptor in the damp | the plug overheats; fire
H2 | S2 | signals, prove | rule, test | the car drives off while plugged in | torn cable and inlet
H3 | S1 | high voltage, prove | test | stray capacitance of wiring meets a switching charger, or there is a true leak | the residual-current device trips
H4 | S3 | pack, prove | rule, test | the charger’s profile is for another cell count or chemistry | over-charge, or never full
H5 | S3 | high voltage, prove | rule, test | the inlet’s protective earth is not bonded to the body | a touch voltage in a fault
H6 | S1 | signals, prove | test | the pilot circuit’s ground is not the charger control’s ground | the post never gives power
H7 | S2 | signals, prove | test | the latch switch of the plug is not used | contacts part under load
H8 | S2 | signals, prove | drawing, test | one output feeds another backwards | things wake that should sleep
I1 | S1 | thermal, prove | rule, test | the radiator is far too small | power is cut after a few kilometres in summer
I2 | S2 | thermal, prove | drawing, test | air is trapped, or the pump sits above the coolant | no flow
I3 | S2 | thermal, prove | drawing, test | the pump fails unnoticed | parts overheat
I4 | S2 | thermal | rule | the hottest part comes first in the loop, electronics last | electronics get hot coolant
I5 | S2 | thermal, build | drawing | metals or coolants are mixed | corrosion and gel in narrow plates
J1 | S3 | brakes & steering, prove | rule, test | the engine’s vacuum is gone and nothing stands in | a very hard pedal
J2 | S2 | brakes & steering, prove | rule, test | a hose leaks | the pump never rests, drains 12 V and dies
J3 | S3 | brakes & steering, prove | rule, test | strong recovery works without stop lamps | somebody drives into the car
J4 | S3 | drive, brakes & steering, prove | rule, test | recovery on one axle asks more than the grip of wet or ice | wheels lock; the car spins
J5 | S2 | fit, prove | rule, test | ride height, lamp aim or geometry changed | failed inspection, strange handling
J6 | S3 | brakes & steering, prove | rule, test | the steering pump left with the engine | heavy steering
J7 | S1 | service | test | recovery does all the work | discs rust
K1 | S3 | thermal, high voltage, prove | rule, test | a heater is switched by a relay for AC or low voltage | it welds on; heat without a fan
K2 | S2 | thermal, prove | rule, test | nothing demists the screen once the engine’s heat is gone | blind in winter, failed inspection
L1 | S2 | signals, prove | rule, test | two nodes send under one identifier | corrupted data, bus errors
L2 | S1 | signals, prove | rule, test | bit rates differ, or terminations are too many or too few | no traffic
L3 | S3 | fit, signals, prove | rule, test | pedal wires lie along motor cables | torque twitches
L4 | S1 | prove | test | screens and bonds are poor | radio and remote key go weak
M1 | S1 | donor, signals | rule | the engine computer misses its sensors | speedometer and warning lamps die
M2 | S1 | brief, signals | rule | the immobiliser is tied to the engine computer | no start, and a remark at approval
N1 | S2 | brief | rule | the body is drilled or cut before anybody was asked | full approval demanded, registration withdrawn
N2 | S1 | brief | rule | the car is classed as hand-built | modern lamps, telltales and sealing are asked for
N3 | S1 | build | test | used parts differ from their advert | money and weeks lost
`
