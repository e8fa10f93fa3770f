package fidelity

// Sources that several tests share.
var (
	everyHandbook = Source{Practice, "29.7 d² √NP, in every handbook"}
	reactionForm  = Source{Practice, "nozzle reaction 1.57 d² NP, 0.0505 Q √NP"}
	engineersTip  = Source{Read, "Hydraulic Institute, Engineering Data Book, table of theoretical discharge of nozzles, C = 1.0"}
	handouts      = Source{Read, "municipal pump-operation handouts (City of Renton; City of Rohnert Park), friction coefficients"}
	hoseMemory    = Source{Memory, "friction coefficient of the trade's tables"}
	rohnertPark   = Source{Read, "City of Rohnert Park, apparatus operator slides 3-8"}
	renton        = Source{Read, "City of Renton, pump-operation handout: siamesed lines"}
	nwcgContent   = Source{Read, "NWCG, Fireline Handbook, table 3.1"}
	pdpFormula    = Source{Computed, "PDP = NP + FL + AL ± EL with FL = C (Q/100)² L/100"}
	nfpaHydrant   = Source{Read, "NFPA 291, Q_R = Q_F (h_R/h_F)^0.54 (read at second hand)"}
	kolb          = Source{Read, "T. Kolb, water supply slides"}
	dropPractice  = Source{Practice, "further like lines by percent drop"}
	rating        = Source{Memory, "NFPA 1901/1911, rating points of fire pumps"}
	reliefRule    = Source{Read, "NFPA 1901-2016, TIA 16-1, 16.13.4: rise of 30 psi at most, all discharges shut in 3 to 10 s"}
	reliefModel   = Source{Computed, "trial model of the pump with this apparatus's constants"}
	reliefLaw     = Source{Computed, "the pump's curve and the valve's law solved together by bisection"}
	primeRule     = Source{Memory, "NFPA 1901: primed within 30 s up to 1250 gpm, 45 s from 1500 gpm"}
	vacuumRule    = Source{Memory, "NFPA 1911, dry vacuum test: 22 inHg, loss of 10 inHg in 5 min at most"}
	tankRule      = Source{Memory, "NFPA 1901, tank-to-pump flow: 500 gpm from 500 gal and larger, until 80 % is out"}
	valveRule     = Source{Memory, "NFPA 1901: valves of 3 in and larger not faster than 3 s"}
	iapws         = Source{Read, "IAPWS-IF97, regions 1 and 4"}
	isa           = Source{Computed, "standard atmosphere (ISO 2533, from memory)"}
	nwcgLift      = Source{Read, "NWCG, drafting: 1 inHg is 1.134 ft"}
	deadHead      = Source{Computed, "42.41 Btu/min a horsepower into water and iron of the casing"}
	heatBalanced  = Source{Computed, "energy balance of 100 L of water (c 4.183 kJ/(kg K), IAPWS-IF97) and 150 kg of iron (0.46, from memory), shut-off power 75 hp at 1520 rpm with the cube of the speed, less 30 Btu/(h °F) to the air"}
	minimumFlow   = Source{Read, "pump handbooks: minimum flow gpm = BHP/2.95 for a rise of 15 °F"}
	characterist  = Source{Computed, "method of characteristics, line fed at constant pressure, tip shut linearly"}
	joukowsky     = Source{Computed, "1.25 ρ a ΔV above the pressure at rest"}
	reference     = Source{Computed, "closed form of the reference network; EPANET 2.3.5 agrees within 2e-5"}
	ownConstants  = Source{Computed, "this apparatus's constants by the formulas of the trade"}
	machineMemory = Source{Memory, "apparatus of this class"}
	gaugeGrade    = Source{Memory, "ASME B40.100, grades of gauges"}
	ownDesign     = Source{Assumed, "data of Engine 41"}
	conservation  = Source{Computed, "conservation law; nothing may be lost in the arithmetic"}
	sameAgain     = Source{Computed, "the same actions give the same state, bit for bit"}
	ownFineStep   = Source{Computed, "the same model at 3840 steps a second"}
	intakeRule    = Source{Practice, "20 psi are kept at the intake on a hydrant; NFPA 291 recommends 20 psi"}
)
