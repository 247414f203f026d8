package org.thirstline.model.crop;

/**
 * How many shoots a stand has, how much ground its clumps cover and how vigorous its age leaves it. Immutable and thread-safe.
 */
public final class StandStructure {

    private final double establishmentSurvival;
    private final double shootsYear1;
    private final double shootsYear2;
    private final double shootsYear3;
    private final double matureShootsM2;
    private final double radiusYear1M;
    private final double spreadM;
    private final double radiusMaxM;
    private final double saturation;
    private final double maxLeafAreaIndex;
    private final double onsetAge;
    private final double declinePerYear;
    private final boolean exponential;
    private final double floor;
    private final double rootYear1M;
    private final double rootYear2M;
    private final double rootMatureM;

    /**
     * Creates the process.
     *
     * @param crop the grass
     */
    public StandStructure(CropParameters crop) {
        establishmentSurvival = crop.get(CropParameter.ESTABLISHMENT_SURVIVAL);
        shootsYear1 = crop.get(CropParameter.SHOOTS_PER_PLANT_YEAR_1);
        shootsYear2 = crop.get(CropParameter.SHOOTS_PER_PLANT_YEAR_2);
        shootsYear3 = crop.get(CropParameter.SHOOTS_PER_PLANT_YEAR_3);
        matureShootsM2 = crop.get(CropParameter.MATURE_SHOOTS);
        radiusYear1M = crop.get(CropParameter.CLUMP_RADIUS_YEAR_1);
        spreadM = crop.get(CropParameter.CLUMP_SPREAD);
        radiusMaxM = crop.get(CropParameter.CLUMP_RADIUS_MAX);
        saturation = crop.get(CropParameter.LEAF_AREA_SATURATION);
        maxLeafAreaIndex = crop.get(CropParameter.MAX_LEAF_AREA_INDEX);
        onsetAge = crop.get(CropParameter.DECLINE_ONSET_AGE);
        declinePerYear = crop.get(CropParameter.DECLINE_PER_YEAR);
        exponential = crop.get(CropParameter.DECLINE_EXPONENTIAL) >= 0.5;
        floor = crop.get(CropParameter.DECLINE_FLOOR);
        rootYear1M = crop.get(CropParameter.ROOT_DEPTH_YEAR_1);
        rootYear2M = crop.get(CropParameter.ROOT_DEPTH_YEAR_2);
        rootMatureM = crop.get(CropParameter.ROOT_DEPTH_MATURE);
    }

    /**
     * Plants that establish.
     *
     * @param plantedM2 rhizomes or viable seeds set [m⁻²]
     * @return plants [m⁻²]
     */
    public double established(double plantedM2) {
        return plantedM2 * establishmentSurvival;
    }

    /**
     * Shoots per ground area.
     *
     * @param plantsM2 living plants [m⁻²]
     * @param age growth years, planting year = 1
     * @param vigour share of buds the reserve can feed, 0 to 1
     * @return shoots [m⁻²], not above the mature density
     */
    public double shoots(double plantsM2, int age, double vigour) {
        double perPlant = age <= 1 ? shootsYear1 : age == 2 ? shootsYear2 : shootsYear3 * spread(age);
        return Math.min(matureShootsM2, plantsM2 * perPlant) * vigour;
    }

    /** Area of a clump relative to its third year: shoots spread into gaps as the clump does. */
    private double spread(int age) {
        double relative = radius(age) / radius(3);
        return relative * relative;
    }

    private double radius(int age) {
        return Math.min(radiusMaxM, radiusYear1M + spreadM * (age - 1));
    }

    /**
     * Largest leaf area index that a number of shoots can carry; rises with shoots and saturates.
     *
     * @param shootsM2 shoots [m⁻²]
     * @return [m² m⁻²], the crop's maximum at the mature density
     */
    public double largestLeafAreaIndex(double shootsM2) {
        double relative = Math.min(1.0, shootsM2 / matureShootsM2);
        return maxLeafAreaIndex * Math.expm1(-saturation * relative) / Math.expm1(-saturation);
    }

    /**
     * Share of the ground that clumps cover, if they stand at random: 1 - exp(-n π r²). Young stands and stands with gaps leave
     * ground bare, whatever the leaf area of their clumps; clumps spread slowly into gaps (0.15 m a year, Matlaga et al., trials in
     * Illinois, for rhizomes).
     *
     * @param plantsM2 living plants n [m⁻²]
     * @param age growth years, planting year = 1
     * @return 0 to 1
     */
    public double groundCover(double plantsM2, int age) {
        double radius = radius(age);
        return -Math.expm1(-plantsM2 * Math.PI * radius * radius);
    }

    /**
     * Vigour that an ageing stand keeps: 1 up to the onset age, then linear or exponential decline to a floor.
     *
     * @param age growth years, planting year = 1
     * @return floor to 1
     */
    public double ageFactor(int age) {
        double years = age - onsetAge;
        if (years <= 0.0 || declinePerYear <= 0.0) {
            return 1.0;
        }
        double left = exponential ? Math.pow(1.0 - declinePerYear, years) : 1.0 - declinePerYear * years;
        return Math.max(floor, left);
    }

    /**
     * Depth of water uptake.
     *
     * @param age growth years, planting year = 1
     * @return [m]
     */
    public double rootDepthM(int age) {
        return age <= 1 ? rootYear1M : age == 2 ? rootYear2M : rootMatureM;
    }
}
