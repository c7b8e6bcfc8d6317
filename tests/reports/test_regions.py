"""Decimal marks and paper sizes by place, against Qt's copy of CLDR."""

import pytest
from PySide6.QtCore import QLocale

from benchlog.reports.regions import Paper, here, region_of

PLACES = """
en_US en_GB en_CA en_IE en_ZA en_AU en_IN de_DE de_AT de_CH de_LI fr_FR fr_CA fr_CH it_IT it_CH es_ES es_MX
es_AR es_CL es_CO es_PE es_US es_PR es_GT es_VE pt_PT pt_BR nl_NL nl_BE sv_SE sv_FI nb_NO nn_NO da_DK fi_FI
is_IS et_EE lv_LV lt_LT pl_PL cs_CZ sk_SK hu_HU ro_RO bg_BG el_GR tr_TR ru_RU uk_UA hr_HR sl_SI sr_RS ca_ES
eu_ES gl_ES ja_JP zh_CN ko_KR th_TH vi_VN id_ID he_IL mt_MT ga_IE cy_GB fil_PH sq_AL mk_MK bs_BA ka_GE hy_AM
az_AZ kk_KZ be_BY af_ZA en_AT en_BE en_DE en_DK en_FI en_NL en_SE en_SI es_DO es_HN es_NI es_PA es_SV
"""


@pytest.mark.parametrize("place", PLACES.split())
def test_the_decimal_mark_is_that_of_cldr(place: str) -> None:
    assert region_of(place).decimal == QLocale(place).decimalPoint()


# Source of the territories: CLDR's supplemental data, measurementData/paperSize, from memory.
@pytest.mark.parametrize("place", ["en_US", "fr_CA", "es_MX", "fil_PH", "es_CL", "es_VE", "es-PR", "en_US.UTF-8"])
def test_letter_is_where_letter_is_sold(place: str) -> None:
    assert region_of(place).paper is Paper.LETTER


@pytest.mark.parametrize("place", ["de_DE", "en_GB", "pt_BR", "ja_JP", "C", "", "POSIX", "zh_Hant_TW", "?", "_", "en"])
def test_a4_is_everywhere_else(place: str) -> None:
    assert region_of(place).paper is Paper.A4


def test_what_is_set_for_all_goes_before_the_rest_and_paper_has_a_place_of_its_own() -> None:
    assert here({"LANG": "en_US.UTF-8", "LC_NUMERIC": "de_DE.UTF-8"}) == region_of("de_DE", "en_US")
    assert here({"LANG": "de_DE", "LC_ALL": "en_US"}) == region_of("en_US")
    assert here({"LANG": "en_US", "LC_PAPER": "de_DE@euro"}) == region_of("en_US", "de_DE")
