package water

import "math"

// The reference of these tests: IAPWS-IF97 written out a second time, with math.Pow, straight from the
// form in which the release prints it. Coefficients are from memory; TestReferenceItself holds them
// against the release's own check values.

// saturation is region 4, MPa by kelvin (equations 29 to 31).
func saturation(k float64) float64 {
	n := [...]float64{0, 0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5,
		-0.32325550322333e7, 0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3}
	t := k + n[9]/(k-n[10])
	a := math.Pow(t, 2) + n[1]*t + n[2]
	b := n[3]*math.Pow(t, 2) + n[4]*t + n[5]
	c := n[6]*math.Pow(t, 2) + n[7]*t + n[8]
	return math.Pow(2*c/(-b+math.Pow(b*b-4*a*c, 0.5)), 4)
}

var region1 = [...]struct{ i, j, n float64 }{
	{0, -2, 0.14632971213167}, {0, -1, -0.84548187169114}, {0, 0, -0.37563603672040e1},
	{0, 1, 0.33855169168385e1}, {0, 2, -0.95791963387872}, {0, 3, 0.15772038513228},
	{0, 4, -0.16616417199501e-1}, {0, 5, 0.81214629983568e-3}, {1, -9, 0.28319080123804e-3},
	{1, -7, -0.60706301565874e-3}, {1, -1, -0.18990068218419e-1}, {1, 0, -0.32529748770505e-1},
	{1, 1, -0.21841717175414e-1}, {1, 3, -0.52838357969930e-4}, {2, -3, -0.47184321073267e-3},
	{2, 0, -0.30001780793026e-3}, {2, 1, 0.47661393906987e-4}, {2, 3, -0.44141845330846e-5},
	{2, 17, -0.72694996297594e-15}, {3, -4, -0.31679644845054e-4}, {3, 0, -0.28270797985312e-5},
	{3, 6, -0.85205128120103e-9}, {4, -5, -0.22425281908000e-5}, {4, -2, -0.65171222895601e-6},
	{4, 10, -0.14341729937924e-12}, {5, -8, -0.40516996860117e-6}, {8, -11, -0.12734301741641e-8},
	{8, -6, -0.17424871230634e-9}, {21, -29, -0.68762131295531e-18}, {23, -31, 0.14478307828521e-19},
	{29, -38, 0.26335781662795e-22}, {30, -39, -0.11947622640071e-22}, {31, -40, 0.18228094581404e-23},
	{32, -41, -0.93537087292458e-25},
}

// liquid is region 1: density kg/m³ and heat capacity kJ/(kg K), by kelvin and MPa (equation 7, table 3).
func liquid(k, mpa float64) (density, heat float64) {
	const r = 0.461526
	pi, tau := mpa/16.53, 1386/k
	var gp, gtt float64
	for _, c := range region1 {
		gp -= c.n * c.i * math.Pow(7.1-pi, c.i-1) * math.Pow(tau-1.222, c.j)
		gtt += c.n * math.Pow(7.1-pi, c.i) * c.j * (c.j - 1) * math.Pow(tau-1.222, c.j-2)
	}
	return 1000 * mpa / (r * k * pi * gp), -r * tau * tau * gtt
}
